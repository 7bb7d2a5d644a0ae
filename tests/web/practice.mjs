// A learner at work in the page, and what came of it by the native program's word.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { native } from './in_browser.mjs';

/** The right number of a question that wants one, in its own unit. */
export const rightNumber = (code) => String(JSON.parse(native('mark', code, '1', '--json')).answer);

/** The record as the native program reads it: one object a line. */
export async function recordOf(page) {
    await page.page.waitForTimeout(500);
    const bytes = await page.page.evaluate(() =>
        Array.from(FS.readFile('/home/person/.local/share/steelyard/record.sqlite')));
    const data = mkdtempSync(join(tmpdir(), 'steelyard-record-'));
    writeFileSync(join(data, 'record.sqlite'), Buffer.from(bytes));
    const lines = native('record', 'export', '--data', data, '--format', 'jsonl').trim().split('\n').map((line) => JSON.parse(line));
    rmSync(data, { recursive: true });
    return lines;
}

/** The answers in it. */
export const answersOf = async (page) =>
    (await recordOf(page)).filter((line) => line.answer).map((line) => line.answer);

/** The mock exam in it, as it stands now. */
export const examOf = async (page) => (await recordOf(page)).find((line) => line.exam).exam;

/** What the question on the screen wants. */
export function kindShown(texts) {
    const says = (words) => texts.some((text) => text.startsWith(words));
    return says('Type a number') ? 'number' : says('Choose one') ? 'one'
        : says('Choose every') ? 'several' : says('Choose them') ? 'order' : 'place';
}

/** Gives an answer of its kind: the right one to a question for a number, anything else else. */
export async function fillIn(page, hand, kind, code) {
    if (kind === 'number') {
        await page.type(rightNumber(code));
    } else if (kind === 'order') {
        const choices = (await page.texts()).filter((text) => /^[A-I]$/.test(text)).length;
        for (let number = 1; number <= choices; ++number) await hand.choose(number);
    } else if (kind === 'place') {
        await hand.place();
    } else {
        await hand.choose(1);
    }
}

/** Answers the question that is shown. @return its kind and code */
export async function answer(page, hand) {
    const texts = await page.texts();
    const code = texts.find((text) => text.startsWith('code ')).slice(5);
    const kind = kindShown(texts);
    await fillIn(page, hand, kind, code);
    await hand.goOn();
    return { kind, code };
}

/** Goes on until a question is asked. */
export async function nextQuestion(page, hand) {
    for (let tries = 0; tries < 8 && !(await page.texts()).includes('Check'); ++tries) await hand.goOn();
}

/** Answers whatever a quiz or a session asks, to its end or until so many are answered. */
export async function workThrough(page, hand, most = 99) {
    const answered = [];
    for (let steps = 0; steps < 60 && answered.length < most && !await page.says('Another one'); ++steps)
        if ((await page.texts()).includes('Check')) answered.push(await answer(page, hand));
        else await hand.goOn();
    return answered;
}

/** Begins as a newcomer called Ada. */
export async function sayName(page) {
    await page.press('F6');
    await page.type('Ada');
    await page.press('Enter');
}
