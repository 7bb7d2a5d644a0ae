// What all tests of the page share: the page handed out, a browser for each test, and the native
// program that says what is right. PAGE names the folder that scripts/web.sh --out made, PROGRAM the
// program; scripts/test_web.sh makes both and runs the tests.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { browser, serve } from './page.mjs';

export const folder = process.env.PAGE;
export let server;
before(async () => { server = await serve(folder); });
after(() => server.stop());

/** Runs a test in a browser of its own. */
export function inBrowser(name, body, options = {}) {
    test(name, async () => {
        const opened = await browser(options);
        try {
            await body(opened);
        } finally {
            await opened.end();
        }
    });
}

/** What the native program prints. */
export const native = (...words) =>
    execFileSync(process.env.PROGRAM, words, { encoding: 'utf8', maxBuffer: 1 << 28 });

/** What the native program finds for the text of a setup. */
export function solved(text) {
    const place = mkdtempSync(join(tmpdir(), 'steelyard-'));
    const file = join(place, 'bench.setup.toml');
    writeFileSync(file, text);
    const found = JSON.parse(native('solve', '--json', file));
    rmSync(place, { recursive: true });
    return found;
}

/** The text of a setup that comes with the program. */
export const shipped = (name) =>
    readFileSync(new URL(`../../assets/setups/${name}.setup.toml`, import.meta.url), 'utf8');
