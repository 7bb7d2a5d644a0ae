// Exported items in a renderer that is not ours: each is shown, answered as a person would, and
// scored there. scripts/test_qti.sh runs this; PROGRAM names the program, COUNT how many questions.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { chromium } from 'playwright-core';

const renderer = createRequire(import.meta.url).resolve('@citolab/qti-components/package.json')
    .replace('package.json', 'cdn/index.global.js');
const count = process.env.COUNT ?? '120';

/** The texts of an export by their names, and its questions as the program tells them. */
function exported() {
    const place = mkdtempSync(join(tmpdir(), 'steelyard-'));
    const words = ['--count', count, '--seed', '11'];
    const run = (...all) => execFileSync(process.env.PROGRAM, all, { encoding: 'utf8', maxBuffer: 1 << 28 });
    run('export', '--format', 'qti3', ...words, '--out', join(place, 'a.zip'));
    const reader = 'import json, sys, zipfile\npack = zipfile.ZipFile(sys.argv[1])\n'
        + 'print(json.dumps({name: pack.read(name).decode() for name in pack.namelist()}))';
    const files = JSON.parse(execFileSync('/usr/bin/python3', ['-c', reader, join(place, 'a.zip')],
        { encoding: 'utf8', maxBuffer: 1 << 28 }));
    rmSync(place, { recursive: true });
    return { files, questions: JSON.parse(run('generate', ...words, '--json')).questions };
}

let browser;
let page;
before(async () => {
    browser = await chromium.launch({ executablePath: '/usr/bin/chromium',
        args: ['--headless=new', '--no-sandbox', '--disable-gpu'] });
    page = await browser.newPage();
    await page.setContent('<!doctype html><qti-item><item-container></item-container></qti-item>');
    await page.addScriptTag({ path: renderer });
});
after(() => browser.close());

/** Shows an item anew. */
async function show(xml) {
    await page.evaluate(async (text) => {
        const old = document.querySelector('item-container');
        const fresh = document.createElement('item-container');
        old.replaceWith(fresh);
        await fresh.updateComplete; // what is set before the first update is not shown
        fresh.itemXML = text;
        const ready = () => fresh.shadowRoot?.querySelector('qti-assessment-item')?.variables?.length > 4;
        for (let tries = 0; tries < 3000 && !ready(); ++tries) await new Promise((done) => setTimeout(done, 10));
        if (!ready()) throw new Error(`not shown: ${fresh.shadowRoot?.innerHTML.slice(0, 500)}`);
    }, xml);
}

/** Types a number or ticks a choice; what takes dragging is given as a whole. */
async function answer(question, given) {
    if (question.kind === 'numeric') {
        await page.locator('qti-text-entry-interaction input').fill(String(given));
        await page.keyboard.press('Tab');
    } else if (question.kind === 'ordering') {
        await page.evaluate((order) => document.querySelector('item-container').shadowRoot
            .querySelector('qti-assessment-item').updateResponseVariable('RESPONSE', order), given);
    } else {
        for (const letter of given) await page.locator(`qti-simple-choice[identifier="${letter}"]`).click();
    }
}

/** What the renderer makes of it. */
function scored() {
    return page.evaluate(async () => {
        const item = document.querySelector('item-container').shadowRoot.querySelector('qti-assessment-item');
        const given = () => item.variables.find((one) => one.identifier === 'RESPONSE').value;
        for (let tries = 0; tries < 500 && given() === null; ++tries) await new Promise((done) => setTimeout(done, 10));
        item.processResponse();
        await new Promise((done) => setTimeout(done, 20));
        const value = Object.fromEntries(item.variables.map((one) => [one.identifier, one.value]));
        const image = item.querySelector('img');
        return { value, alt: image?.getAttribute('alt') ?? null,
            text: item.querySelector('qti-item-body').textContent };
    });
}

const letter = (index) => String.fromCharCode(65 + index);
const right = (question) => (question.kind === 'numeric' ? question.answer
    : [question.correct].flat().map(letter));
function wrong(question) {
    if (question.kind === 'numeric') return question.answer * 3 + 1000 * question.tolerance + 7;
    if (question.kind === 'ordering') return [...right(question)].reverse();
    const other = question.choices.map((_, index) => index).find((index) => ![question.correct].flat().includes(index));
    return [letter(other)];
}

test('every item is shown and scored as the program marks it', async () => {
    const { files, questions } = exported();
    const faults = [];
    page.on('pageerror', (error) => faults.push(String(error)));
    let drawn = 0;
    for (const question of questions) {
        const xml = files[`items/q-${question.code}.xml`];
        const say = `${question.code} (${question.family})`;
        assert.ok(xml, say);
        for (const isRight of [true, false]) {
            await show(xml);
            await answer(question, isRight ? right(question) : wrong(question));
            const { value, alt, text } = await scored();
            assert.equal(Number(value.SCORE), isRight ? 1 : 0, say);
            assert.equal(Number(value.MAXSCORE), 1, say);
            assert.equal(value.FEEDBACK === 'right', isRight, say);
            assert.equal(value.SOLUTION, 'answered', say);
            assert.ok(alt === null || alt.length > 20, `${say}: ${alt}`);
            assert.ok(text.replace(/\s+/g, ' ').includes(question.prompt.split('\n')[0].replace(/\s+/g, ' ').slice(0, 40)), say);
            drawn += alt === null ? 0 : 1;
        }
        for (const [rule, number] of Object.entries(question.wrong_rules)) {
            await show(xml);
            await answer(question, number);
            const { value } = await scored();
            assert.equal(Number(value.SCORE), 0, `${say}: ${rule}`);
            assert.match(value.FEEDBACK, /^rule-/, `${say}: ${rule}`);
        }
    }
    assert.deepEqual(faults, []);
    assert.ok(drawn > 0);
    console.log(`${questions.length} questions, ${drawn / 2} of them with a drawing`);
});
