// Steelyard as a page in a real browser: node --test page.test.mjs
// PAGE names the folder that scripts/web.sh --out made, PROGRAM the native program.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync, readdirSync, cpSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { gzipSync } from 'node:zlib';
import { Page, browser, serve } from './page.mjs';

const folder = process.env.PAGE;
const program = process.env.PROGRAM;
const root = new URL('../..', import.meta.url).pathname;
const setups = join(root, 'assets/setups');
let server;

before(async () => { server = await serve(folder); });
after(() => server.stop());

/** Runs a test in a browser of its own. */
function inBrowser(name, body, options = {}) {
    test(name, async () => {
        const opened = await browser(options);
        try {
            await body(opened);
        } finally {
            await opened.end();
        }
    });
}

const solved = (text) => {
    const file = join(mkdtempSync(join(tmpdir(), 'steelyard-')), 'bench.setup.toml');
    writeFileSync(file, text);
    return JSON.parse(execFileSync(program, ['solve', '--json', file]));
};

test('the page is small enough for a phone', () => {
    const bytes = readdirSync(folder).map((name) => gzipSync(readFileSync(join(folder, name)), { level: 9 }).length);
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

inBrowser('a dragged load gives the numbers that the native solver gives', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.drop('seesaw.setup.toml', readFileSync(join(setups, 'seesaw.setup.toml'), 'utf8'));
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
    const native = solved(kept.setup);
    assert.ok(native.load_arm_m < 1.0, `the load is at ${native.load_arm_m}`); // it was at 1.1 m
    const texts = await page.texts();
    const at = texts.indexOf('Load torque');
    assert.equal(texts[at + 1], `${Math.round(Math.abs(native.torque_load_Nm))} N·m`);
});

/** A candidate's first quick quiz by keys, up to some answers. */
async function practise(page, answers) {
    await page.press('F6');
    await page.type('Ada');
    await page.press('Enter');
    assert.ok(await page.says('Quick quiz'));
    await page.click('Quick quiz');
    for (let i = 0; i < answers; ++i) {
        for (let tries = 0; tries < 12 && !await page.says('code '); ++tries) await page.press('Enter');
        const code = (await page.texts()).find((text) => text.startsWith('code ')).slice(5);
        const mark = JSON.parse(execFileSync(program, ['mark', code, '1', '--json']));
        if (await page.says('Type a number')) await page.type(String(mark.answer));
        else if (await page.says('Choose them in order')) for (const n of '1234') await page.press(n);
        else await page.press('1');
        await page.press('Enter', 'Enter');
    }
}
const answersKept = (page) => page.page.evaluate(() => {
    const file = '/home/person/.local/share/steelyard/record.sqlite';
    return FS.analyzePath(file).exists ? FS.stat(file).size : 0;
});

inBrowser('a record is there again after a reload and after a killed tab', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await practise(page, 2);
    await page.wait(async () => await answersKept(page) > 0, 'a record');
    await page.page.waitForTimeout(1000);
    await page.page.reload();
    await page.wait(async () => (await page.told()).frames > 0, 'a frame after the reload');
    await page.press('F6');
    assert.ok(await page.says('Ada'), (await page.texts()).join(' | '));
    await page.page.close(); // no chance to say goodbye
    const other = await Page.open(context, server.address);
    await other.press('F6');
    assert.ok(await other.says('Ada'));
});

inBrowser('a second tab says that it keeps nothing', async ({ context }) => {
    await Page.open(context, server.address);
    const second = new Page(await context.newPage());
    await second.page.goto(server.address + '?narration');
    await second.wait(async () => (await second.told()).frames > 0, 'the second tab');
    assert.match(await second.page.locator('#said').innerText(), /another tab/);
});

inBrowser('fingers walk through the places on a phone held upright, and nothing is cut off',
    async ({ context }) => {
        const page = await Page.open(context, server.address);
        for (const word of ['Bench', 'Body', 'Practice']) {
            await page.tap(word);
            const frame = await page.rest();
            const cut = frame.texts.filter((entry) => entry.x < -1 || entry.x + entry.width > 391);
            assert.deepEqual(cut.map((entry) => entry.text), [], word);
        }
    }, { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 3 });

inBrowser('a handout is given to the person as files', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.press('F8');
    assert.ok(await page.says('Handout'));
    const download = page.page.waitForEvent('download', { timeout: 60_000 });
    await page.click('Make');
    const given = await download;
    assert.match(given.suggestedFilename(), /\.(html|zip|csv)$/);
});

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
    const axe = join(process.env.NODE_MODULES ?? '.', 'axe-core/axe.min.js');
    for (const address of [server.address, server.address + 'licences.html']) {
        await page.page.goto(address);
        await page.page.waitForTimeout(1500);
        await page.page.addScriptTag({ path: axe });
        const found = await page.page.evaluate(() => axe.run());
        assert.deepEqual(found.violations.map((one) => `${one.id}: ${one.help}`), [], address);
    }
});
