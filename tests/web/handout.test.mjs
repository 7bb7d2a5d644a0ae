// Sheets and keys as pages for a browser: what axe-core finds in those that the native program writes.

import assert from 'node:assert/strict';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { inBrowser, native } from './in_browser.mjs';

inBrowser('axe finds nothing wrong with a sheet and its key', async ({ context }) => {
    const place = mkdtempSync(join(tmpdir(), 'steelyard-'));
    for (const size of [[], ['--large-print']])
        native('handout', '--blueprint', 'boathouse', '--html', ...size, '--seed', String(5 + size.length),
            '--versions', '2', '--out', place);
    const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
    const pages = readdirSync(place);
    assert.equal(pages.length, 8);
    const page = await context.newPage();
    for (const name of pages) {
        await page.goto(pathToFileURL(join(place, name)).href);
        await page.addScriptTag({ path: axe });
        const found = await page.evaluate(() => axe.run());
        assert.ok(found.passes.length > 10, name);
        assert.deepEqual(found.violations.map((one) => `${one.id}: ${one.help}`), [], name);
    }
    rmSync(place, { recursive: true });
});
