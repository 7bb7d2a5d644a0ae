// The page by fingers, on a phone held upright.

import assert from 'node:assert/strict';
import { Finger } from './hands.mjs';
import { inBrowser, phone, server, shipped, solved } from './in_browser.mjs';
import { Page } from './page.mjs';
import { answersOf, kindShown, workThrough } from './practice.mjs';

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
    const answered = await workThrough(page, new class extends Finger {
        async goOn() {
            const texts = await page.texts();
            if (texts.includes('Check') && kindShown(texts) === 'number') assert.equal(await typed(), 'decimal');
            await super.goOn();
        }
    }(page));
    assert.equal(answered.length, 5);
    assert.equal((await answersOf(page)).length, 5);
}, phone);

inBrowser('two fingers bring the sheet nearer, farther, and move it', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await page.drop('seesaw.setup.toml', shipped('seesaw'));
    const across = async () => {
        const [a, b] = [await page.grip('heavier child place'), await page.grip('axis place')];
        return { x: b.x, y: b.y, width: Math.hypot(a.x - b.x, a.y - b.y) };
    };
    const before = await across();
    const apart = (px) => [[195 - px, 300], [195 + px, 300]];
    await page.fingers([apart(30), apart(40), apart(60), apart(90)]);
    const nearer = await across();
    assert.ok(nearer.width > 1.5 * before.width, `${before.width} to ${nearer.width}`);
    await page.fingers([apart(90), apart(60), apart(40), apart(30)]);
    const farther = await across();
    assert.ok(Math.abs(farther.width - before.width) < 0.2 * before.width, `${before.width} to ${farther.width}`);
    const moved = (x, y) => [[150 + x, 300 + y], [240 + x, 300 + y]];
    await page.fingers([moved(0, 0), moved(10, 10), moved(30, 20), moved(50, 40)]);
    const after = await across();
    assert.ok(Math.abs(after.width - farther.width) < 0.05 * farther.width);
    assert.ok(after.x > farther.x + 25 && after.y > farther.y + 15,
        `${farther.x}, ${farther.y} to ${after.x}, ${after.y}`);
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
