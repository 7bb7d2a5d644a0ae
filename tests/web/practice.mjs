// A learner at work in the page, and what came of it by the native program's word.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { native } from './in_browser.mjs';

/** The right number of a question that wants one, in its own unit. */
export const rightNumber = (code) => String(JSON.parse(native('mark', code, '1', '--json')).answer);

/** The record as the native program reads it: one object an answer. */
export async function answersOf(page) {
    await page.page.waitForTimeout(500);
    const bytes = await page.page.evaluate(() =>
        Array.from(FS.readFile('/home/person/.local/share/steelyard/record.sqlite')));
    const data = mkdtempSync(join(tmpdir(), 'steelyard-record-'));
    writeFileSync(join(data, 'record.sqlite'), Buffer.from(bytes));
    const lines = native('record', 'export', '--data', data, '--format', 'jsonl').trim().split('\n').map((line) => JSON.parse(line));
    rmSync(data, { recursive: true });
    return lines.filter((line) => line.answer).map((line) => line.answer);
}

/** Answers the question that is shown, rightly where it wants a number. @return its kind and code */
export async function answer(page, enter) {
    const texts = await page.texts();
    const code = texts.find((text) => text.startsWith('code ')).slice(5);
    const says = (words) => texts.some((text) => text.startsWith(words));
    const kind = says('Type a number') ? 'number' : says('Choose one') ? 'one'
        : says('Choose every') ? 'several' : says('Choose them') ? 'order' : 'place';
    if (kind === 'number')
        await page.type(rightNumber(code));
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
export async function nextQuestion(page, enter) {
    for (let tries = 0; tries < 8 && !(await page.texts()).includes('Check'); ++tries) await enter();
}

/** Begins as a newcomer called Ada. */
export async function sayName(page) {
    await page.press('F6');
    await page.type('Ada');
    await page.press('Enter');
}
