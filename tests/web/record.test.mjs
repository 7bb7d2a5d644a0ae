// What a learner does in the page is kept, and goes out and comes in as a file.

import assert from 'node:assert/strict';
import { Keys } from './hands.mjs';
import { inBrowser, server } from './in_browser.mjs';
import { Page, killTabs, person } from './page.mjs';
import { answer, answersOf, nextQuestion, sayName, workThrough } from './practice.mjs';

/** A newcomer at the first question of a quick quiz, who has answered it. */
async function answeredOne(page) {
    const keys = new Keys(page);
    await sayName(page);
    await page.press('q');
    await nextQuestion(page, keys);
    return answer(page, keys);
}

const codesOf = async (page) => (await answersOf(page)).map((one) => one.code);

inBrowser('by keys alone questions of all kinds are answered, and the record agrees', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await sayName(page);
    const answered = [];
    for (let quiz = 0; quiz < 6 && new Set(answered.map((one) => one.kind)).size < 4; ++quiz) {
        await page.press('q');
        answered.push(...await workThrough(page, new Keys(page)));
        await page.press('Escape');
    }
    console.log(`kinds: ${answered.map((one) => one.kind).join(' ')}`);
    const kept = await answersOf(page);
    assert.deepEqual(new Set(kept.map((one) => one.code)), new Set(answered.map((one) => one.code)));
    for (const { kind, code } of answered)
        if (kind === 'number') assert.equal(kept.find((one) => one.code === code).outcome, 'right', code);
    assert.ok(new Set(answered.map((one) => one.kind)).size >= 3);
});

inBrowser('a record is there again after a reload, and after a closed tab', async ({ context }) => {
    const page = await Page.open(context, server.address);
    const { code } = await answeredOne(page);
    assert.deepEqual(await codesOf(page), [code]);
    await page.page.reload();
    await page.wait(async () => (await page.told()).frames > 0, 'a frame after the reload');
    await page.press('F6');
    assert.deepEqual(await codesOf(page), [code]);
    await page.page.close();
    const other = await Page.open(context, server.address);
    await other.press('F6');
    assert.ok(await other.says('Ada'));
    assert.deepEqual(await codesOf(other), [code]);
});

inBrowser('a tab whose process is killed loses no answer that was told', async ({ context }) => {
    const page = await Page.open(context, server.address);
    const { code } = await answeredOne(page);
    assert.deepEqual(await codesOf(page), [code]);
    const crashed = page.page.waitForEvent('crash');
    await killTabs();
    await crashed;
    const other = await Page.open(context, server.address, await context.newPage());
    await other.press('F6');
    assert.ok(await other.says('Ada'));
    assert.deepEqual(await codesOf(other), [code]);
    assert.ok(await other.page.locator('#said').isHidden()); // the lock went with the process
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

inBrowser('where the browser has no room left it is said, and the answer can still be exported', async ({ context }) => {
    const page = await Page.open(context, server.address);
    await sayName(page);
    await page.page.evaluate(() => {
        IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); };
    });
    await page.press('q');
    await nextQuestion(page, new Keys(page));
    const { code } = await answer(page, new Keys(page));
    await page.wait(async () => await page.page.locator('#said').isVisible(), 'the sentence');
    assert.match(await page.page.locator('#said').innerText(), /no room/);
    await page.page.locator('#said button').click();
    await page.press('Escape', 'Escape', 'p');
    const { bytes } = await page.download(() => page.press('x'));
    assert.ok(bytes.toString().includes(code));
});

inBrowser('a record goes out as a file and comes in again', async ({ context }) => {
    const page = await Page.open(context, server.address);
    const { code } = await answeredOne(page);
    await page.press('Escape', 'Escape');
    await page.press('p');
    const { name, bytes } = await page.download(() => page.press('x'));
    assert.ok(bytes.toString().includes(code));
    assert.ok(await page.says(name));
    assert.ok(!await page.says('/home'));
    const other = await person();
    try {
        const second = await Page.open(other, server.address);
        await second.drop('ada.jsonl', bytes.toString());
        assert.ok(await second.says('1 line, 1 question read'), (await second.texts()).join(' | '));
        assert.deepEqual(await codesOf(second), [code]);
    } finally {
        await other.close();
    }
});
