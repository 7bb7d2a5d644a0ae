// What a learner does in the page is kept, and goes out and comes in as a file.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { inBrowser, server } from './in_browser.mjs';
import { Page, browser } from './page.mjs';
import { answer, answersOf, nextQuestion, sayName } from './practice.mjs';

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
