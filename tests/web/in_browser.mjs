// What all tests of the page share: the page handed out, a browser for each test, and the native
// program that says what is right. PAGE names the folder that scripts/web.sh --out made, PROGRAM the
// program; scripts/test_web.sh makes both and runs the tests.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { endBrowser, person, serve } from './page.mjs';

export const folder = process.env.PAGE;
export let server;
before(async () => { server = await serve(folder); });
after(async () => {
    await endBrowser();
    server.stop();
});

/** Runs a test as a person who has never been here. */
export function inBrowser(name, body, options = {}) {
    test(name, async () => {
        const context = await person(options);
        try {
            await body({ context });
        } finally {
            await context.close();
        }
    });
}

/** A phone held upright. */
export const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 3 };

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

/** The files in a zip archive by name, as another reader of that format finds them. */
export function unpacked(bytes) {
    const reader = 'import base64, io, json, sys, zipfile\n'
        + 'pack = zipfile.ZipFile(io.BytesIO(sys.stdin.buffer.read()))\n'
        + 'assert pack.testzip() is None\n'
        + 'print(json.dumps([[n, base64.b64encode(pack.read(n)).decode()] for n in sorted(pack.namelist())]))';
    const files = JSON.parse(execFileSync('/usr/bin/python3', ['-c', reader], { input: bytes, maxBuffer: 1 << 28 }));
    return new Map(files.map(([name, text]) => [name, Buffer.from(text, 'base64')]));
}

/** The text of a setup that comes with the program. */
export const shipped = (name) =>
    readFileSync(new URL(`../../assets/setups/${name}.setup.toml`, import.meta.url), 'utf8');
