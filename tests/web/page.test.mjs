// The page in a real browser: it opens, draws, computes and hands out what the program itself does.
// QUESTIONS names the script that is made of questions_main.cpp.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { gzipSync } from 'node:zlib';
import { folder, inBrowser, native, server, shipped, solved, unpacked } from './in_browser.mjs';
import { Page, serve, serveHalf } from './page.mjs';

test('10,000 questions are those of the native program', () => {
    const begin = Date.now();
    const page = execFileSync(process.execPath, ['--no-experimental-fetch', process.env.QUESTIONS, '7', '10000'],
        { encoding: 'utf8', maxBuffer: 1 << 28 });
    console.log(`10,000 questions in node: ${Date.now() - begin} ms`);
    assert.equal(JSON.parse(page).questions.length, 10000);
    assert.ok(page === native('generate', '--count', '10000', '--seed', '7', '--json'), 'the two papers differ');
});

test('the page is small enough for a phone', () => {
    const parts = readdirSync(folder).filter((name) => name !== 'licences.html');
    const bytes = parts.map((name) => gzipSync(readFileSync(join(folder, name)), { level: 9 }).length);
    const sum = bytes.reduce((a, b) => a + b, 0);
    console.log(`with gzip: ${(sum / 1e6).toFixed(2)} MB`);
    assert.ok(sum <= 1.8e6, `${sum} bytes with gzip`);
});

inBrowser('it opens without an error and draws nothing while nothing happens', async ({ context }) => {
    const begin = Date.now();
    const page = await Page.open(context, server.address);
    console.log(`first frame and rest after ${Date.now() - begin} ms`);
    const frames = (await page.told()).frames;
    await page.page.waitForTimeout(2000);
    assert.equal((await page.told()).frames, frames);
    assert.deepEqual(page.faults, []);
    const again = Date.now();
    await page.page.reload();
    await page.wait(async () => (await page.told()).frames > 0, 'a frame after the reload');
    console.log(`first frame after a reload: ${Date.now() - again} ms`);
});

inBrowser('what a drag costs is measured, and the state of WebGL is never asked for', async ({ context }) => {
    await context.addInitScript(() => {
        window.cost = { own_ms: [], frames: 0, asked: 0, long: [] };
        const call = window.requestAnimationFrame.bind(window);
        window.requestAnimationFrame = (frame) => call((now) => {
            const before = window.cost.frames;
            const begin = performance.now();
            frame(now);
            if (window.cost.frames > before) window.cost.own_ms.push(performance.now() - begin);
        });
        const { prototype } = WebGL2RenderingContext;
        const count = (name, what) => {
            const before = prototype[name];
            prototype[name] = function (...more) {
                window.cost[what] += 1;
                return before.apply(this, more);
            };
        };
        for (const name of ['getParameter', 'getError', 'isEnabled', 'readPixels']) count(name, 'asked');
        count('clear', 'frames'); // every frame begins with it
        new PerformanceObserver((list) => {
            for (const entry of list.getEntries()) window.cost.long.push(Math.round(entry.duration));
        }).observe({ entryTypes: ['longtask'] });
    });
    const page = await Page.open(context, server.address);
    const stages = [];
    for (const [key, name] of [['F3', 'bench'], ['F4', 'body']]) {
        await page.press(key);
        stages.push({ key, name, grip: (await page.rest()).grips[0] });
    }
    await page.kept();
    await page.page.goto(server.address); // without the narration, which costs as much as a frame
    await page.page.waitForFunction(() => window.cost.frames > 0);
    for (const { key, name, grip } of stages) {
        await page.page.keyboard.press(key, { delay: 60 });
        await page.page.mouse.move(grip.x, grip.y);
        await page.page.mouse.down();
        await page.page.waitForTimeout(700); // what is painted for the first time has been
        await page.page.evaluate(() => { window.cost = { own_ms: [], frames: 0, asked: 0, long: [] }; });
        const begin = Date.now();
        for (let i = 1; i <= 90; ++i) await page.page.mouse.move(grip.x + i % 40, grip.y + i % 20);
        const seconds = (Date.now() - begin) / 1000;
        const { own_ms: own, frames, long, asked } = await page.page.evaluate(() => window.cost);
        await page.page.mouse.up();
        own.sort((a, b) => a - b);
        console.log(`${name}: ${(frames / seconds).toFixed(0)} frames a second, own work in the median `
            + `${own[own.length >> 1].toFixed(1)} ms, at most ${own.at(-1).toFixed(1)} ms; `
            + `tasks over 50 ms: ${long.join(' ') || 'none'}`);
        assert.ok(frames > 0);
        assert.equal(asked, 0);
    }
});

inBrowser('a dragged load gives the numbers that the native solver gives', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.drop('seesaw.setup.toml', shipped('seesaw'));
    assert.ok(await page.says('Seesaw'));
    const grip = await page.grip('heavier child place');
    const begin = Date.now();
    const before = (await page.told()).frames;
    await page.page.mouse.move(grip.x, grip.y);
    await page.page.mouse.down();
    for (let i = 1; i <= 20; ++i) await page.page.mouse.move(grip.x + 4 * i, grip.y);
    await page.page.mouse.up();
    await page.page.mouse.move(520, 590);
    await page.rest();
    console.log(`${(await page.told()).frames - before} frames in ${Date.now() - begin} ms of dragging`);
    await page.kept();
    const kept = JSON.parse(await page.file('/home/person/.local/state/steelyard/bench.json'));
    const right = solved(kept.setup);
    assert.ok(right.load_arm_m < 1.0, `the load is at ${right.load_arm_m}`); // it was at 1.1 m
    const texts = await page.texts();
    const at = texts.indexOf('Load torque');
    const torque = Math.abs(right.load_torque_Nm);
    const half = 0.5 * 10 ** (Math.floor(Math.log10(torque)) - 2); // three figures are shown
    assert.ok(Math.abs(Number.parseFloat(texts[at + 1]) - torque) <= 1.001 * half,
        `${texts[at + 1]} is shown, ${torque} is right`);
});

inBrowser('a handout is one package, with the files that the native program writes', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.press('F8');
    for (const format of ['QTI 2.1', 'CSV with keys']) await page.click(format);
    await page.page.evaluate(() => {
        window.long = [];
        new PerformanceObserver((list) => {
            for (const entry of list.getEntries()) window.long.push(Math.round(entry.duration));
        }).observe({ entryTypes: ['longtask'] });
    });
    const { name, bytes } = await page.download(() => page.click('Make 8'));
    console.log(`tasks over 50 ms while it is made: ${(await page.page.evaluate(() => window.long)).join(' ') || 'none'}`);
    const [, blueprint, seed] = /^(.+)-(\d+)\.zip$/.exec(name);
    assert.ok(await page.says(name));
    assert.ok(!await page.says('/home'));
    const given = unpacked(bytes);
    const folder = mkdtempSync(join(tmpdir(), 'steelyard-handout-'));
    native('handout', '--html', '--blueprint', blueprint, '--seed', seed, '--versions', '2', '--out', folder);
    const pages = readdirSync(folder);
    assert.equal(pages.length, 4);
    for (const file of pages) assert.ok(given.get(file).equals(readFileSync(join(folder, file))), file);
    rmSync(folder, { recursive: true });
    for (const version of ['A', 'B']) {
        const code = `${blueprint}-${seed}-${version}`;
        const questions = given.get(`${code}.html`).toString().split('class="number"').length - 1;
        const table = unpacked(given.get(`${code}-csv.zip`));
        const rows = table.get('questions.csv').toString().trim().split('\n');
        assert.ok(rows.length > questions, `${rows.length} rows`); // and the headings
        for (const [, picture] of table.get('questions.csv').toString().matchAll(/(pictures\/[-\w]+\.svg)/g))
            assert.ok(table.has(picture), picture);
        const items = unpacked(given.get(`${code}-qti21.zip`));
        const manifest = items.get('imsmanifest.xml').toString();
        const named = [...manifest.matchAll(/<file href="([^"]+)"/g)].map(([, path]) => path);
        assert.deepEqual(named.filter((path) => !items.has(path)), []);
        assert.equal(manifest.split('imsqti_item_xmlv2p1').length - 1, questions);
        for (const [file, content] of items)
            if (file.endsWith('.xml')) execFileSync('/usr/bin/python3', ['-c', 'import sys, xml.dom.minidom as d; d.parse(sys.stdin.buffer)'], { input: content });
    }
});

inBrowser('a picture is painted as PNG, and its curves as SVG', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.press('F4');
    for (const [word, begin] of [['PNG', '\x89PNG'], ['SVG', '<?xml']]) {
        const { name, bytes } = await page.download(() => page.click(word));
        assert.ok(bytes.toString('latin1').startsWith(begin), `${word}: ${bytes.subarray(0, 20)}`);
        assert.ok(bytes.length > 5000);
        assert.ok(await page.says(name));
        assert.ok(!await page.says('/home'));
    }
});

/** How bright a corner of the sheet is, 0 to 255. */
async function brightness(page) {
    await page.rest();
    const shot = await page.page.screenshot({ clip: { x: 2, y: 2, width: 1, height: 1 } });
    return page.page.evaluate(async (png) => {
        const picture = await createImageBitmap(await (await fetch('data:image/png;base64,' + png)).blob());
        const sheet = new OffscreenCanvas(1, 1).getContext('2d');
        sheet.drawImage(picture, 0, 0);
        return sheet.getImageData(0, 0, 1, 1).data[0];
    }, shot.toString('base64'));
}

inBrowser('a dark sheet follows the system, also when it turns dark later', async ({ context }) => {
    const page = await Page.open(context, server.address);
    assert.ok(await brightness(page) < 60);
    await page.page.emulateMedia({ colorScheme: 'light' });
    await page.wait(async () => await brightness(page) > 200, 'the light sheet');
    await page.page.emulateMedia({ colorScheme: 'dark' });
    await page.wait(async () => await brightness(page) < 60, 'the dark sheet');
    await page.press('d'); // chosen by the person, it stays
    const chosen = await brightness(page);
    await page.page.emulateMedia({ colorScheme: 'light' });
    await page.page.waitForTimeout(300);
    assert.equal(await brightness(page), chosen);
}, { colorScheme: 'dark' });

for (const part of ['steelyard.js', 'steelyard.wasm', 'steelyard.data'])
    inBrowser(`half of ${part} is said to be not all`, async ({ context }) => {
        const half = await serveHalf(folder, part);
        const page = await context.newPage();
        await page.goto(half.address);
        await page.waitForFunction(() => document.getElementById('coming').innerText.includes('did not arrive'),
            null, { timeout: 30_000 });
        half.stop();
    });

inBrowser('a file that is missing is said, and what has no WebGL 2 is told so', async ({ context }) => {
    const broken = mkdtempSync(join(tmpdir(), 'steelyard-broken-'));
    cpSync(folder, broken, { recursive: true });
    rmSync(join(broken, 'steelyard.data'));
    const half = await serve(broken);
    const page = await context.newPage();
    await page.goto(half.address);
    await page.waitForFunction(() => document.getElementById('coming').innerText.includes('did not arrive'),
        null, { timeout: 30_000 });
    half.stop();
    const without = await context.newPage();
    await without.addInitScript(() => {
        const get = HTMLCanvasElement.prototype.getContext;
        HTMLCanvasElement.prototype.getContext = function (kind, ...more) {
            return kind === 'webgl2' ? null : get.call(this, kind, ...more);
        };
    });
    await without.goto(server.address);
    await without.waitForFunction(() => document.getElementById('coming').innerText.includes('WebGL 2'),
        null, { timeout: 30_000 });
});

inBrowser('axe finds nothing wrong with the page around the drawing', async ({ context }) => {
    const page = await Page.open(context, server.address);
    const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
    for (const address of [server.address, server.address + 'licences.html']) {
        await page.page.goto(address);
        await page.page.waitForTimeout(1500);
        await page.page.addScriptTag({ path: axe });
        const found = await page.page.evaluate(() => axe.run());
        assert.deepEqual(found.violations.map((one) => `${one.id}: ${one.help}`), [], address);
    }
});
