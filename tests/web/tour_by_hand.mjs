// Minutes long, so run by hand: node --test tests/web/tour_by_hand.mjs, as scripts/test_web.sh runs the others.
// The README's five minutes for a candidate, walked in the page by mouse and by finger. What is
// looked at in the end are numbers and states: the record and the setups that were kept.

import assert from 'node:assert/strict';
import { Finger, Mouse } from './hands.mjs';
import { inBrowser, phone, server, solved } from './in_browser.mjs';
import { Page } from './page.mjs';
import { answersOf, examOf, fillIn, kindShown, workThrough } from './practice.mjs';

const state = async (page, name) => {
    await page.kept();
    return JSON.parse(await page.file(`/home/person/.local/state/steelyard/${name}.json`));
};

/** The first three points: a name, a quick quiz, a session. */
async function practise(page, hand) {
    await hand.press('Study');
    await page.type('Ada');
    await page.press('Enter');
    await hand.press('Quick quiz');
    const quiz = await workThrough(page, hand);
    assert.equal(quiz.length, 5);
    await hand.press('Back to practice');
    await hand.press("Today's session");
    const session = await workThrough(page, hand, 2);
    await hand.press('Leave');
    await hand.press('Back to practice');
    const kept = await answersOf(page);
    assert.deepEqual(new Set(kept.map((one) => one.code)), new Set([...quiz, ...session].map((one) => one.code)));
    for (const { kind, code } of [...quiz, ...session])
        if (kind === 'number') assert.equal(kept.find((one) => one.code === code).outcome, 'right', code);
    return kept.length;
}

/** The fourth and the fifth: the exam's day, and the staircase. */
async function lookAhead(page, hand, answers) {
    const day = new Date(Date.now() + 60 * 86_400_000).toISOString().slice(0, 10);
    await hand.press('Set its day');
    await page.type(day);
    await page.press('Enter');
    assert.ok((await page.texts()).includes(day));
    await hand.press('Progress');
    assert.ok(await page.says(`Ada, ${answers} answers so far`));
    await hand.press('Back to practice');
}

/** The sixth: so many questions of the mock exam, and its end. @return the kinds that were asked */
async function sitExam(page, hand, most) {
    await hand.press('Mock exam');
    await hand.press('Begin; the clock runs');
    const codes = (await examOf(page)).items.map((item) => item.code);
    const kinds = [];
    for (const code of codes.slice(0, most)) {
        const kind = kindShown(await page.texts());
        await fillIn(page, hand, kind, code);
        await hand.goOn();
        kinds.push(kind);
    }
    assert.deepEqual(await page.cutOff(), []);
    if (!await page.says('End it')) await hand.press('End the exam');
    await hand.press('End it');
    const exam = await examOf(page);
    assert.deepEqual(exam.items.map((item) => item.answer !== ''), codes.map((_, at) => at < kinds.length));
    const [, right, of] = /(\d+) of (\d+) right/.exec((await page.texts()).join(' '));
    assert.equal(Number(of), codes.length);
    assert.ok(Number(right) >= kinds.filter((kind) => kind === 'number').length, `${right} right`);
    await hand.press('Back to practice');
    return kinds;
}

/** The seventh: a wheelbarrow's load nearer to the wheel, and how the effort is computed. */
async function lookWhy(page, hand) {
    await hand.press('Bench');
    await hand.press('Levers');
    await hand.press('Wheelbarrow');
    const load = await page.grip('gravel place');
    const before = solved((await state(page, 'bench')).setup);
    await hand.drag([[load.x, load.y], [load.x + 8, load.y], [load.x + 24, load.y]]);
    const after = solved((await state(page, 'bench')).setup);
    assert.notEqual(after.load_arm_m, before.load_arm_m);
    const lines = (await page.rest()).texts.length;
    await hand.press('Effort');
    assert.ok((await page.rest()).texts.length > lines);
}

/** The eighth and the ninth: an exercise moved and pulled, and two of them made equal. */
async function lookAtTheBody(page, hand) {
    await hand.press('Body');
    const { progress } = await state(page, 'body');
    const { x: playX, y: playY } = await hand.press('Play the repetition', false);
    await page.page.waitForTimeout(1000);
    await hand.pressAt(playX, playY); // the same button stops it
    assert.notEqual((await state(page, 'body')).progress, progress);
    const before = (await state(page, 'body')).setup;
    const { x, y } = (await page.rest()).grips[0];
    await hand.drag([[x, y], [x + 6, y - 6], [x + 20, y - 16]]);
    assert.notEqual((await state(page, 'body')).setup, before);
    assert.deepEqual(await page.cutOff(), []);
    await hand.press('Side by side');
    const pair = await state(page, 'pair');
    await hand.press('Make B equal A');
    await page.wait(async () => (await state(page, 'pair')).b !== pair.b || await page.says('cannot'), 'a change of B');
    assert.equal((await state(page, 'pair')).a, pair.a);
    assert.deepEqual(await page.cutOff(), []);
}

for (const [name, Hand, most, options] of [['a mouse', Mouse, 8, {}], ['a finger on a phone', Finger, 4, phone]]) {
    inBrowser(`a candidate practises and sits the mock exam by ${name}`, async ({ context }) => {
        const page = await Page.open(context, server.address);
        const hand = new Hand(page);
        await lookAhead(page, hand, await practise(page, hand));
        const kinds = await sitExam(page, hand, most);
        assert.equal(kinds.length, most);
        assert.deepEqual(page.faults, []);
    }, options);

    inBrowser(`a candidate looks why by ${name}`, async ({ context }) => {
        const page = await Page.open(context, server.address);
        const hand = new Hand(page);
        await lookWhy(page, hand);
        await lookAtTheBody(page, hand);
        assert.deepEqual(page.faults, []);
    }, options);
}

inBrowser('on a phone held upright nothing is cut off', async ({ context }) => {
    const page = await Page.open(context, server.address);
    for (const word of ['Bench', 'Body', 'Study', 'Side by side', 'Workshop', 'Handout', 'Start']) {
        await page.tap(word);
        assert.deepEqual(await page.cutOff(), [], word);
        if (['Side by side', 'Workshop'].includes(word)) // whose names tell one thing from another
            assert.deepEqual((await page.texts()).filter((text) => text.endsWith('…')), [], word);
    }
}, phone);
