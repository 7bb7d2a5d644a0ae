// The page by fingers, on a phone held upright.

import assert from 'node:assert/strict';
import { inBrowser, server, shipped, solved } from './in_browser.mjs';
import { Page } from './page.mjs';
import { answersOf, rightNumber } from './practice.mjs';

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
            await page.type(rightNumber(code));
        } else if (isAsked && texts.includes('1')) {
            const inOrder = await page.says('Choose them in order');
            for (const digit of inOrder ? ['1', '2', '3', '4', '5'] : ['1']) {
                const choice = (await page.rest()).texts.find((entry) => entry.text === digit);
                if (choice) await page.page.touchscreen.tap(choice.x + 30, choice.y - 4);
                await page.rest();
            }
        } else if (isAsked) {
            await page.finger([[195, 250]]); // a place on the drawing
        }
        await page.tapAnyOf(['Check', 'Next', 'See', 'I have read it']);
        checked += isAsked ? 1 : 0;
    }
    assert.ok(checked >= 5);
    assert.equal((await answersOf(page)).length, 5);
}, phone);

inBrowser('fingers drag, scroll, and a long press types a number', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.drop('seesaw.setup.toml', shipped('seesaw'));
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
