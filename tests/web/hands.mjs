// The ways to reach what is on the page: keys, a mouse, a finger. A learner at work has one of them.

/** What stands before a choice. */
export const letterOf = (number) => 'ABCDEFGHI'[number - 1];

export class Keys {
    constructor(page) { this.page = page; }
    choose(number) { return this.page.press(String(number)); }
    place() { return this.page.press('ArrowRight'); }
    goOn() { return this.page.press('Enter'); }
}

/** What a mouse and a finger do alike: they go to what they see. */
class Pointing {
    constructor(page) { this.page = page; }

    /** A choice by its number: its words begin beside its letter. */
    async choose(number) {
        // The last one that is shown: a drawing may have letters of its own.
        const letter = letterOf(number);
        const choice = (await this.page.rest()).texts.filter((entry) => entry.text === letter).at(-1);
        if (!choice) throw new Error(`there is no choice ${letter}`);
        await this.pressAt(choice.x + 30, choice.y - 4);
    }

    /** A place that is asked for, from where it is marked to somewhere beside it. */
    async place() {
        const { x, y } = await this.page.grip('placed');
        const aside = x < 0.4 * this.page.page.viewportSize().width ? 60 : -60;
        await this.drag([[x, y], [x + aside / 4, y - 10], [x + aside, y - 30]]);
    }

    goOn() { return this.pressAnyOf(['Check', 'Save and next', 'Next', 'See', 'I have read it']); }

    /** The first of these words that is shown. */
    async pressAnyOf(words) {
        const texts = await this.page.texts();
        const shown = words.find((word) => texts.some((text) => text.startsWith(word)));
        if (!shown) throw new Error(`none of ${words.join(', ')} is shown: ${texts.join(' | ')}`);
        await this.press(shown);
    }
}

export class Mouse extends Pointing {
    press(word, rests) { return this.page.click(word, rests); }

    async pressAt(x, y) {
        await this.page.page.mouse.click(x, y, { delay: 80 });
        await this.page.rest();
    }

    async drag(places) {
        const mouse = this.page.page.mouse;
        await mouse.move(...places[0]);
        await mouse.down();
        for (const place of places.slice(1)) await mouse.move(...place, { steps: 4 });
        await mouse.up();
        await this.page.rest();
    }
}

export class Finger extends Pointing {
    press(word, rests) { return this.page.tap(word, rests); }

    async pressAt(x, y) {
        await this.page.page.touchscreen.tap(x, y);
        await this.page.rest();
    }

    drag(places) { return this.page.finger(places); }
}
