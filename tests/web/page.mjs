// A page of Steelyard in a real browser, driven as a person would: by pointer, keys and fingers. What
// it shows is read from its narration, which the page writes when its address ends in ?narration.

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
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

/** The same, but of one file only the first half comes before the connection ends. */
export async function serveHalf(folder, halved) {
    const types = { '.html': 'text/html', '.js': 'text/javascript', '.wasm': 'application/wasm', '.svg': 'image/svg+xml' };
    const server = createServer((request, response) => {
        const name = new URL(request.url, 'http://here').pathname.slice(1) || 'index.html';
        const bytes = readFileSync(join(folder, name));
        response.writeHead(200, { 'Content-Type': types[extname(name)] ?? 'application/octet-stream',
            'Content-Length': bytes.length });
        if (name !== halved) return response.end(bytes);
        response.write(bytes.subarray(0, bytes.length / 2), () => response.destroy());
    });
    server.listen(0, '127.0.0.1');
    await once(server, 'listening');
    return { address: `http://127.0.0.1:${server.address().port}/`, stop() {
        server.closeAllConnections();
        server.close();
    } };
}

let running; // one browser for all tests of a file: to start one takes longer than some tests

/** A person at the browser: storage, screen and wishes of their own. */
export async function person(options = {}) {
    running ??= chromium.launch({
        executablePath: '/usr/bin/chromium', headless: false,
        args: ['--headless=new', '--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader',
            '--enable-unsafe-swiftshader', '--disable-quic', '--no-first-run',
            '--disable-background-networking', '--disable-component-update', '--disable-sync'],
    });
    return (await running).newContext({ viewport: { width: 1280, height: 720 }, ...options });
}

/** Kills the processes that draw this browser's tabs. */
export async function killTabs() {
    const session = await (await running).newBrowserCDPSession();
    const { processInfo } = await session.send('SystemInfo.getProcessInfo');
    for (const { type, id } of processInfo) if (type === 'renderer') process.kill(id, 'SIGKILL');
}

export async function endBrowser() {
    if (running) await (await running).close();
}

export class Page {
    constructor(page) {
        this.page = page;
        this.faults = [];
        page.on('pageerror', (error) => this.faults.push(String(error)));
        page.on('console', (line) => { if (line.type() === 'error') this.faults.push(line.text()); });
    }

    static async open(context, address, tab = null) {
        const opened = new Page(tab ?? context.pages()[0] ?? await context.newPage());
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

    /** @param rests  false where it begins what goes on moving. @return where it was */
    async click(word, rests = true) {
        const { height } = this.page.viewportSize();
        for (let tries = 0; tries < 8 && (await this.place(word)).y > height - 8; ++tries) {
            await this.page.mouse.move((await this.place(word)).x, height - 120);
            await this.page.mouse.wheel(0, 300);
            await this.rest();
        }
        const { x, y } = await this.place(word);
        await this.page.mouse.click(x, y, { delay: 80 });
        if (rests) await this.rest();
        return { x, y };
    }

    async tap(word, rests = true) {
        const { height } = this.page.viewportSize();
        for (let tries = 0; tries < 8 && (await this.place(word)).y > height - 8; ++tries)
            await this.finger([[60, height - 60], [60, height - 90], [60, height - 260]]);
        const { x, y } = await this.place(word);
        await this.page.touchscreen.tap(x, y);
        if (rests) await this.rest();
        return { x, y };
    }

    /** One finger: put down, along the places, held still for a while, lifted. */
    finger(places, held_ms = 0) { return this.fingers(places.map((place) => [place]), held_ms); }

    /** Several fingers at once: where all of them are, moment by moment. */
    async fingers(moments, held_ms = 0) {
        const session = await this.page.context().newCDPSession(this.page);
        const touch = (type, places) => session.send('Input.dispatchTouchEvent',
            { type, touchPoints: places.map(([x, y], id) => (places.length > 1 ? { x, y, id } : { x, y })) });
        await touch('touchStart', moments[0]);
        await this.page.waitForTimeout(100 + held_ms);
        for (const places of moments.slice(1)) {
            await touch('touchMove', places);
            await this.page.waitForTimeout(60);
        }
        await touch('touchEnd', []);
        await session.detach();
        await this.rest();
    }

    /** What is shown beyond the left or the right edge of the page. */
    async cutOff() {
        const { width } = this.page.viewportSize();
        return (await this.rest()).texts.filter((entry) => entry.x < -1 || entry.x + entry.width > width + 1)
            .map((entry) => entry.text);
    }

    /** Waits for what an act gives the person as a file. @return its name and its bytes */
    async download(act) {
        const [given] = await Promise.all([this.page.waitForEvent('download', { timeout: 60_000 }), act()]);
        return { name: given.suggestedFilename(), bytes: readFileSync(await given.path()) };
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
