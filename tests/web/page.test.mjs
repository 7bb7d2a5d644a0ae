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
import { folder, inBrowser, native, server, shipped, solved } from './in_browser.mjs';
import { Page, serve } from './page.mjs';

test('10,000 questions are those of the native program', () => {
    const begin = Date.now();
    const page = execFileSync(process.execPath, ['--no-experimental-fetch', process.env.QUESTIONS, '7', '10000'],
        { encoding: 'utf8', maxBuffer: 1 << 28 });
    console.log(`10,000 questions in node: ${Date.now() - begin} ms`);
    assert.equal(JSON.parse(page).length, 10000);
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
        window.cost = { own_ms: [], asked: 0, long: [] };
        const call = window.requestAnimationFrame.bind(window);
        window.requestAnimationFrame = (frame) => call((now) => {
            const begin = performance.now();
            frame(now);
            const own = performance.now() - begin;
            if (own > 0.3) window.cost.own_ms.push(own); // a look that finds nothing to do costs less
        });
        for (const name of ['getParameter', 'getError', 'isEnabled', 'readPixels']) {
            const before = WebGL2RenderingContext.prototype[name];
            WebGL2RenderingContext.prototype[name] = function (...more) {
                window.cost.asked += 1;
                return before.apply(this, more);
            };
        }
        new PerformanceObserver((list) => {
            for (const entry of list.getEntries()) window.cost.long.push(Math.round(entry.duration));
        }).observe({ entryTypes: ['longtask'] });
    });
    const page = await Page.open(context, server.address);
    for (const [key, name] of [['F3', 'bench'], ['F4', 'body']]) {
        await page.press(key);
        const grip = (await page.rest()).grips[0];
        await page.page.mouse.move(grip.x, grip.y);
        await page.page.mouse.down();
        await page.page.evaluate(() => { window.cost.own_ms = []; window.cost.long = []; window.cost.asked = 0; });
        const begin = Date.now();
        const before = (await page.told()).frames;
        for (let i = 1; i <= 90; ++i) await page.page.mouse.move(grip.x + i % 40, grip.y + i % 20);
        const frames = (await page.told()).frames - before;
        const seconds = (Date.now() - begin) / 1000;
        await page.page.mouse.up();
        const { own_ms: own, long, asked } = await page.page.evaluate(() => window.cost);
        own.sort((a, b) => a - b);
        console.log(`${name}: ${(frames / seconds).toFixed(0)} frames a second, own work in the median `
            + `${own[own.length >> 1].toFixed(1)} ms, at most ${own.at(-1).toFixed(1)} ms; `
            + `tasks over 50 ms: ${long.join(' ') || 'none'}`);
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
    const torque = Math.abs(right.torque_load_Nm);
    const half = 0.5 * 10 ** (Math.floor(Math.log10(torque)) - 2); // three figures are shown
    assert.ok(Math.abs(Number.parseFloat(texts[at + 1]) - torque) <= 1.001 * half,
        `${texts[at + 1]} is shown, ${torque} is right`);
});

inBrowser('a handout is given to the person as files', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.press('F8');
    assert.ok(await page.says('Handout'));
    const download = page.page.waitForEvent('download', { timeout: 60_000 });
    await page.click('Make 4');
    const given = await download;
    assert.match(given.suggestedFilename(), /\.(html|zip|csv)$/);
});

inBrowser('a picture is painted as PNG, and its curves as SVG', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.press('F4');
    for (const [word, begin] of [['PNG', '\x89PNG'], ['SVG', '<?xml']]) {
        const download = page.page.waitForEvent('download', { timeout: 30_000 });
        await page.click(word);
        const bytes = readFileSync(await (await download).path(), 'latin1');
        assert.ok(bytes.startsWith(begin), `${word}: ${bytes.slice(0, 20)}`);
        assert.ok(bytes.length > 5000);
    }
});

inBrowser('a dark sheet and less motion follow the system', async ({ context }) => {
    const page = await Page.open(context, server.address);
    const look = async () => {
        await page.click('Settings');
        const shot = await page.page.screenshot({ clip: { x: 2, y: 2, width: 1, height: 1 } });
        const brightness = await page.page.evaluate(async (png) => {
            const picture = await createImageBitmap(await (await fetch('data:image/png;base64,' + png)).blob());
            const sheet = new OffscreenCanvas(1, 1).getContext('2d');
            sheet.drawImage(picture, 0, 0);
            return sheet.getImageData(0, 0, 1, 1).data[0];
        }, shot.toString('base64'));
        return brightness;
    };
    assert.ok(await look() < 60);
}, { colorScheme: 'dark', reducedMotion: 'reduce' });

inBrowser('what is missing is said, and what has no WebGL 2 is told so', async ({ context }) => {
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
