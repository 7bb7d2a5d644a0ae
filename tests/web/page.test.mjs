// Steelyard as a page in a real browser: node --test page.test.mjs
// PAGE names the folder that scripts/web.sh --out made, PROGRAM the native program.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync, readdirSync, cpSync, rmSync } from 'node:fs';
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

test('10,000 questions are those of the native program', () => {
    const begin = Date.now();
    const most = { encoding: 'utf8', maxBuffer: 1 << 28 };
    const page = execFileSync(process.execPath, ['--no-experimental-fetch', process.env.QUESTIONS, '7', '10000'], most);
    console.log(`10,000 questions in node: ${Date.now() - begin} ms`);
    const native = execFileSync(program, ['generate', '--count', '10000', '--seed', '7', '--json'], most);
    assert.equal(JSON.parse(page).length, 10000);
    assert.ok(page === native, 'the two papers differ');
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
    const torque = Math.abs(native.torque_load_Nm);
    const half = 0.5 * 10 ** (Math.floor(Math.log10(torque)) - 2); // three figures are shown
    assert.ok(Math.abs(Number.parseFloat(texts[at + 1]) - torque) <= 1.001 * half,
        `${texts[at + 1]} is shown, ${torque} is right`);
});

/** The record as the native program reads it: one object an answer. */
async function answersOf(page) {
    await page.page.waitForTimeout(500);
    const bytes = await page.page.evaluate(() =>
        Array.from(FS.readFile('/home/person/.local/share/steelyard/record.sqlite')));
    const data = mkdtempSync(join(tmpdir(), 'steelyard-record-'));
    writeFileSync(join(data, 'record.sqlite'), Buffer.from(bytes));
    const lines = execFileSync(program, ['record', 'export', '--data', data, '--format', 'jsonl'],
        { encoding: 'utf8' }).trim().split('\n').map((line) => JSON.parse(line));
    rmSync(data, { recursive: true });
    return lines.filter((line) => line.answer).map((line) => line.answer);
}

/** Answers the question that is shown, rightly where it wants a number. @return its kind and code */
async function answer(page, enter) {
    const texts = await page.texts();
    const code = texts.find((text) => text.startsWith('code ')).slice(5);
    const says = (words) => texts.some((text) => text.startsWith(words));
    const kind = says('Type a number') ? 'number' : says('Choose one') ? 'one'
        : says('Choose every') ? 'several' : says('Choose them') ? 'order' : 'place';
    if (kind === 'number')
        await page.type(String(JSON.parse(execFileSync(program, ['mark', code, '1', '--json'])).answer));
    else if (kind === 'order')
        for (const digit of '1234') await page.press(digit);
    else if (kind === 'place')
        await page.press('ArrowRight');
    else
        await page.press('1');
    await enter();
    return { kind, code };
}

/** Goes on until a question is asked. */
async function nextQuestion(page, enter) {
    for (let tries = 0; tries < 8 && !(await page.texts()).includes('Check'); ++tries) await enter();
}

/** Begins as a newcomer called Ada. */
async function sayName(page) {
    await page.press('F6');
    await page.type('Ada');
    await page.press('Enter');
}

inBrowser('by keys alone questions of all kinds are answered, and the record agrees', async ({ context }) => {
    const page = await Page.open(context, server.address);
    const enter = () => page.press('Enter');
    await sayName(page);
    const answered = [];
    for (let quiz = 0; quiz < 6 && new Set(answered.map((one) => one.kind)).size < 4; ++quiz) {
        await page.press('q');
        for (let steps = 0; steps < 40 && !await page.says('Another one'); ++steps)
            if ((await page.texts()).includes('Check')) answered.push(await answer(page, enter));
            else await enter();
        await page.press('Escape');
    }
    console.log(`kinds: ${answered.map((one) => one.kind).join(' ')}`);
    const kept = await answersOf(page);
    assert.deepEqual(new Set(kept.map((one) => one.code)), new Set(answered.map((one) => one.code)));
    for (const { kind, code } of answered)
        if (kind === 'number') assert.equal(kept.find((one) => one.code === code).outcome, 'right', code);
    assert.ok(new Set(answered.map((one) => one.kind)).size >= 3);
});

inBrowser('a record is there again after a reload and after a killed tab', async ({ context }) => {
    const page = await Page.open(context, server.address);
    const enter = () => page.press('Enter');
    await sayName(page);
    await page.press('q');
    await nextQuestion(page, enter);
    const { code } = await answer(page, enter);
    assert.deepEqual((await answersOf(page)).map((one) => one.code), [code]);
    await page.page.reload();
    await page.wait(async () => (await page.told()).frames > 0, 'a frame after the reload');
    await page.press('F6');
    assert.deepEqual((await answersOf(page)).map((one) => one.code), [code]);
    await page.page.close(); // no chance to say goodbye
    const other = await Page.open(context, server.address);
    await other.press('F6');
    assert.ok(await other.says('Ada'));
    assert.deepEqual((await answersOf(other)).map((one) => one.code), [code]);
});

inBrowser('a second tab says that it keeps nothing', async ({ context }) => {
    await Page.open(context, server.address);
    const second = new Page(await context.newPage());
    await second.page.goto(server.address + '?narration');
    await second.wait(async () => (await second.told()).frames > 0, 'the second tab');
    assert.match(await second.page.locator('#said').innerText(), /another tab/);
});

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 3 };

inBrowser('on a phone held upright nothing is cut off', async ({ context }) => {
    const page = await Page.open(context, server.address);
    for (const word of ['Bench', 'Body', 'Practice', 'Side by side', 'Start']) {
        await page.tap(word);
        const frame = await page.rest();
        const cut = frame.texts.filter((entry) => entry.x < -1 || entry.x + entry.width > 391);
        assert.deepEqual(cut.map((entry) => entry.text), [], word);
    }
}, phone);

inBrowser('a quick quiz is done by fingers and the keys on the screen', async ({ context }) => {
    const page = await Page.open(context, server.address);
    const typed = () => page.page.evaluate(() => {
        const field = document.getElementById('typed');
        return document.activeElement === field ? field.inputMode : 'none';
    });
    await page.tap('Quick quiz');
    assert.equal(await typed(), 'text'); // a name is asked for
    await page.type('Ada');
    await page.press('Enter');
    let checked = 0;
    for (let steps = 0; steps < 40 && !await page.says('Another one'); ++steps) {
        const texts = await page.texts();
        const isAsked = texts.includes('Check');
        if (isAsked && await page.says('Type a number')) {
            assert.equal(await typed(), 'decimal');
            const code = texts.find((text) => text.startsWith('code ')).slice(5);
            await page.type(String(JSON.parse(execFileSync(program, ['mark', code, '1', '--json'])).answer));
        } else if (isAsked && texts.includes('1')) {
            const choice = (await page.rest()).texts.find((entry) => entry.text === '1');
            await page.page.touchscreen.tap(choice.x + 30, choice.y - 4);
            await page.rest();
        } else if (isAsked) {
            await page.finger([[195, 250]]); // a place on the drawing
        }
        await page.tapAnyOf(['Check', 'Next', 'See', 'I have read it']);
        checked += isAsked ? 1 : 0;
    }
    assert.ok(checked >= 5);
    assert.equal((await answersOf(page)).length, 5);
}, phone);

inBrowser('where the browser keeps nothing it is said at once, and practice goes on', async ({ context }) => {
    await context.addInitScript(() => {
        IDBFactory.prototype.open = () => { throw new DOMException('denied', 'SecurityError'); };
    });
    const page = await Page.open(context, server.address);
    assert.match(await page.page.locator('#said').innerText(), /keeps nothing/);
    await sayName(page);
    assert.ok(await page.says('Quick quiz'));
});

inBrowser('a record goes out as a file and comes in again', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await sayName(page);
    await page.press('q');
    await nextQuestion(page, () => page.press('Enter'));
    const { code } = await answer(page, () => page.press('Enter'));
    await page.press('Escape', 'Escape');
    await page.press('p');
    const download = page.page.waitForEvent('download', { timeout: 30_000 });
    await page.press('x');
    const exported = readFileSync(await (await download).path(), 'utf8');
    assert.ok(exported.includes(code));
    const other = await browser();
    try {
        const second = await Page.open(other.context, server.address);
        await second.drop('ada.jsonl', exported);
        assert.ok(await second.says('1 answer read'), (await second.texts()).join(' | '));
        assert.deepEqual((await answersOf(second)).map((one) => one.code), [code]);
    } finally {
        await other.end();
    }
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

inBrowser('fingers drag, scroll, and a long press types a number', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.drop('seesaw.setup.toml', readFileSync(join(setups, 'seesaw.setup.toml'), 'utf8'));
    const load = await page.grip('heavier child place');
    await page.finger([[load.x, load.y], [load.x + 10, load.y], [load.x + 40, load.y]]);
    const dragged = await page.grip('heavier child place');
    assert.ok(Math.abs(dragged.x - load.x - 40) < 12, `${load.x} to ${dragged.x}`);

    const before = (await page.rest()).texts.find((entry) => entry.text === 'Effort');
    await page.finger([[100, 700], [100, 680], [100, 620], [100, 600]]);
    const after = (await page.rest()).texts.find((entry) => entry.text === 'Effort');
    assert.ok(after.y < before.y - 60, `${before.y} to ${after.y}`);

    await page.finger([[dragged.x, dragged.y]], 700);
    assert.equal(await page.page.evaluate(() => document.activeElement.id), 'typed');
    await page.press('Backspace');
    await page.type('1');
    await page.press('Enter');
    await page.kept();
    const kept = JSON.parse(await page.file('/home/person/.local/state/steelyard/bench.json'));
    assert.ok(Math.abs(solved(kept.setup).load_arm_m - 0.5) < 1e-9); // the axis is at 1.5 m
}, phone);

inBrowser('a handout is given to the person as files', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.press('F8');
    assert.ok(await page.says('Handout'));
    const download = page.page.waitForEvent('download', { timeout: 60_000 });
    await page.click('Make 4');
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
