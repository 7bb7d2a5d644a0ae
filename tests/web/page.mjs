// A page of Steelyard in a real browser, driven as a person would: by pointer, keys and fingers. What
// it shows is read from its narration, which the page writes when its address ends in ?narration.

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const LONGEST_WAIT_MS = 60_000;

/** Hands a folder out on this machine; the port stays, since what is kept belongs to it. */
export async function serve(folder) {
    const server = spawn('/usr/bin/python3',
        [join(import.meta.dirname ?? new URL('.', import.meta.url).pathname, '../../scripts/web_server.py'), folder, '0'],
        { stdio: ['ignore', 'pipe', 'inherit'] });
    const [said] = await once(server.stdout, 'data');
    return { address: `http://127.0.0.1:${String(said).trim()}/`, stop: () => server.kill() };
}

/** A browser with a profile of its own. */
export async function browser(options = {}) {
    const profile = options.profile ?? mkdtempSync(join(tmpdir(), 'steelyard-page-'));
    const context = await chromium.launchPersistentContext(profile, {
        executablePath: '/usr/bin/chromium', headless: false, acceptDownloads: true,
        viewport: { width: 1280, height: 720 },
        args: ['--headless=new', '--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader',
            '--enable-unsafe-swiftshader', '--disable-quic', '--no-first-run',
            '--disable-background-networking', '--disable-component-update', '--disable-sync'],
        ...options,
    });
    return { context, profile, async end(keep = false) {
        await context.close();
        if (!keep) rmSync(profile, { recursive: true, force: true });
    } };
}

export class Page {
    constructor(page) {
        this.page = page;
        this.faults = [];
        page.on('pageerror', (error) => this.faults.push(String(error)));
        page.on('console', (line) => { if (line.type() === 'error') this.faults.push(line.text()); });
    }

    static async open(context, address) {
        const opened = new Page(context.pages()[0] ?? await context.newPage());
        await opened.page.goto(address + '?narration');
        await opened.wait(async () => (await opened.told()).frames > 0, 'the first frame');
        await opened.rest();
        return opened;
    }

    /** The last frame, how many there were, and whether the page rests. */
    told() {
        return this.page.evaluate(() => {
            if (typeof FS === 'undefined' || !FS.analyzePath('/narration').exists)
                return { frames: 0 };
            const lines = FS.readFile('/narration', { encoding: 'utf8' }).trimEnd().split('\n');
            const drawn = lines.filter((line) => line.startsWith('{"frame"'));
            const last = lines.at(-1) ?? '';
            return { frames: drawn.length, frame: drawn.length ? JSON.parse(drawn.at(-1)) : null,
                     rests: last.startsWith('{"kept"') && JSON.parse(last).rest,
                     kept: last.startsWith('{"kept"') && JSON.parse(last).kept };
        });
    }

    async wait(isSo, what) {
        const end = Date.now() + LONGEST_WAIT_MS;
        while (!await isSo()) {
            if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
            await this.page.waitForTimeout(30);
        }
    }

    async rest() {
        // The program has looked in since what was done to it, however busy the machine is.
        await this.page.evaluate(() => new Promise((done) =>
            requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)))));
        await this.wait(async () => (await this.told()).rests, 'the page to rest');
        return (await this.told()).frame;
    }

    async kept() {
        await this.wait(async () => (await this.told()).kept, 'what was done to be kept');
    }

    async texts() { return (await this.rest()).texts.map((entry) => entry.text.replaceAll('\u00a0', ' ')); }
    async says(words) { return (await this.texts()).join(' ').includes(words); }

    async place(word) {
        const frame = await this.rest();
        const found = frame.texts.find((entry) => entry.text.replaceAll('\u00a0', ' ').startsWith(word));
        if (!found) throw new Error(`'${word}' is not shown: ${frame.texts.map((one) => one.text).join(' | ')}`);
        return { x: found.x + found.width / 2, y: found.y - 0.3 * found.em };
    }

    async grip(name) {
        const found = (await this.rest()).grips.find((entry) => entry.text === name);
        if (!found) throw new Error(`there is no grip '${name}'`);
        return found;
    }

    async press(...keys) {
        for (const key of keys) {
            await this.page.keyboard.press(key, { delay: 60 });
            await this.rest();
        }
    }

    async type(text) {
        await this.page.keyboard.type(text, { delay: 40 });
        await this.rest();
    }

    async click(word) {
        const { x, y } = await this.place(word);
        await this.page.mouse.click(x, y, { delay: 80 });
        await this.rest();
    }

    async tap(word) {
        const { height } = this.page.viewportSize();
        for (let tries = 0; tries < 8 && (await this.place(word)).y > height - 8; ++tries)
            await this.finger([[60, height - 60], [60, height - 90], [60, height - 260]]);
        const { x, y } = await this.place(word);
        await this.page.touchscreen.tap(x, y);
        await this.rest();
    }

    /** Taps the first of these words that is shown. */
    async tapAnyOf(words) {
        const texts = await this.texts();
        const shown = words.find((word) => texts.some((text) => text.startsWith(word)));
        if (!shown) throw new Error(`none of ${words.join(', ')} is shown: ${texts.join(' | ')}`);
        await this.tap(shown);
    }

    /** One finger: put down, along the places, held still for a while, lifted. */
    async finger(places, held_ms = 0) {
        const session = await this.page.context().newCDPSession(this.page);
        const touch = (type, place) => session.send('Input.dispatchTouchEvent',
            { type, touchPoints: place ? [{ x: place[0], y: place[1] }] : [] });
        await touch('touchStart', places[0]);
        await this.page.waitForTimeout(100 + held_ms);
        for (const place of places.slice(1)) {
            await touch('touchMove', place);
            await this.page.waitForTimeout(60);
        }
        await touch('touchEnd');
        await this.rest();
    }

    /** A file of the page's own file system as text. */
    file(path) { return this.page.evaluate((name) => FS.readFile(name, { encoding: 'utf8' }), path); }

    /** Drops a file on the page, as from a file manager. */
    async drop(name, text) {
        await this.page.evaluate(([to, what]) => {
            const data = new DataTransfer();
            data.items.add(new File([what], to));
            document.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
        }, [name, text]);
        await this.page.waitForTimeout(200);
        await this.rest();
    }
}
