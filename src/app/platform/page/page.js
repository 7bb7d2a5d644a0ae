// What a page has to do for the program: say what came in, keep its files, hand files out.
// Joined before the program's own script; `Module` is the program.

var Module = typeof Module === 'undefined' ? {} : Module;

(() => {
    'use strict';
    const home = '/home/person';
    const kept = home + '/.local';
    const canvas = document.getElementById('canvas');
    const typed = document.getElementById('typed');
    const said = document.getElementById('said');
    const chosen = document.getElementById('chosen');
    let running = false;
    let wantsTyping = false; // a text field waits for keys drawn on the screen

    /** Says a sentence at the foot of the page; what is said stays until it is put away. */
    function say(sentence) {
        const known = [...said.querySelectorAll('p')].some((one) => one.textContent === sentence);
        if (!known) {
            const line = document.createElement('p');
            line.textContent = sentence;
            said.insertBefore(line, said.lastElementChild);
        }
        said.hidden = false;
    }
    said.lastElementChild.addEventListener('click', () => {
        said.hidden = true;
        for (const line of said.querySelectorAll('p')) line.remove();
        canvas.focus();
    });

    /** The program cannot go on: nothing but this sentence is left. */
    function give_up(sentence) {
        const coming = document.getElementById('coming');
        coming.hidden = false;
        coming.firstElementChild.textContent = sentence;
        canvas.hidden = true;
    }

    const MISSING = 'A part of Steelyard did not arrive. Check the connection and load the page again.';
    const call = (name, ...args) => { if (running) Module['_' + name](...args); };
    const callText = (name, text) => {
        if (running)
            Module.ccall(name, null, ['string'], [text]);
    };

    // --- pointers ---
    const Phase = {down: 0, moved: 1, up: 2, cancelled: 3};
    function pointer(phase, event) {
        const box = canvas.getBoundingClientRect();
        // A mouse's buttons by the browser: left, middle, right.
        call('page_pointer', phase, event.pointerId, event.pointerType === 'touch' ? 1 : 0,
             Math.min(2, Math.max(0, event.button)), event.clientX - box.left, event.clientY - box.top);
        event.preventDefault();
    }
    canvas.addEventListener('pointerdown', (event) => {
        canvas.setPointerCapture(event.pointerId);
        if (!wantsTyping) canvas.focus({preventScroll: true}); // else the keys would go and come
        pointer(Phase.down, event);
    });
    canvas.addEventListener('pointermove', (event) => pointer(Phase.moved, event));
    canvas.addEventListener('pointerup', (event) => {
        pointer(Phase.up, event);
        // Some browsers show their keys only to who asks within what the finger does.
        if (wantsTyping) typed.focus({preventScroll: true});
    });
    canvas.addEventListener('pointercancel', (event) => pointer(Phase.cancelled, event));
    canvas.addEventListener('contextmenu', (event) => event.preventDefault());
    canvas.addEventListener('wheel', (event) => {
        const line = event.deltaMode === 1 ? 40 : event.deltaMode === 2 ? 400 : 1;
        call('page_scroll', -event.deltaY * line / 100);
        event.preventDefault();
    }, {passive: false});

    // --- keys: numbers as in key.h ---
    const named = {
        ' ': 32, Escape: 256, Enter: 257, Tab: 258, Backspace: 259, Insert: 260, Delete: 261,
        ArrowRight: 262, ArrowLeft: 263, ArrowDown: 264, ArrowUp: 265, PageUp: 266, PageDown: 267,
        Home: 268, End: 269
    };
    function number_of(event) {
        if (event.code === 'NumpadEnter') return 335;
        if (event.code === 'NumpadAdd') return 334;
        if (event.code === 'NumpadSubtract') return 333;
        const f = /^F(\d+)$/.exec(event.key);
        if (f) return 289 + Number(f[1]);
        if (event.key in named) return named[event.key];
        if (/^[a-z]$/i.test(event.key)) return event.key.toUpperCase().charCodeAt(0);
        const digit = /^Digit(\d)$/.exec(event.code);
        if (digit) return 48 + Number(digit[1]);
        return event.key.length === 1 && event.key < '\x7f' ? event.key.charCodeAt(0) : 0;
    }
    const modifiers_of = (event) =>
        (event.shiftKey ? 1 : 0) | (event.ctrlKey || event.metaKey ? 2 : 0) | (event.altKey ? 4 : 0);
    // These stay the browser's: pasting comes as an event of its own.
    const browsers = (event) => event.key === 'F12' ||
        ((event.ctrlKey || event.metaKey) && (/^[vrtnwl]$/i.test(event.key) || event.shiftKey)) ||
        (event.altKey && event.key.startsWith('Arrow'));
    function keydown(event) {
        if (event.key === 'F10') { // a way out for who has no mouse
            document.getElementById('beside').focus();
            event.preventDefault();
            return;
        }
        if (browsers(event) || event.isComposing || event.key === 'Unidentified' || event.key === 'Process')
            return;
        call('page_key', 1, number_of(event), modifiers_of(event));
        if (event.key.length === 1 && !event.ctrlKey && !event.metaKey)
            callText('page_text', event.key);
        event.preventDefault();
    }
    function keyup(event) { call('page_key', 0, number_of(event), modifiers_of(event)); }
    for (const target of [canvas, typed]) {
        target.addEventListener('keydown', keydown);
        target.addEventListener('keyup', keyup);
    }
    const tap = (key) => { call('page_key', 1, key, 0); setTimeout(() => call('page_key', 0, key, 0), 60); };
    // The keys on a screen say only what becomes of the text.
    typed.addEventListener('beforeinput', (event) => {
        if (event.inputType.startsWith('delete')) tap(259);
        else if (event.inputType === 'insertLineBreak') tap(257);
        else if (event.data && event.inputType !== 'insertCompositionText') callText('page_text', event.data);
        if (event.inputType !== 'insertCompositionText') event.preventDefault();
    });
    typed.addEventListener('compositionend', (event) => {
        callText('page_text', event.data || '');
        typed.value = '';
    });
    // Keys on a screen that have no Enter have a word above them that puts them away.
    typed.addEventListener('blur', (event) => {
        if (wantsTyping && event.relatedTarget === null && document.hasFocus()) tap(257);
    });
    document.addEventListener('paste', (event) => {
        callText('page_text', event.clipboardData.getData('text').replace(/\s+/g, ' '));
        event.preventDefault();
    });
    window.addEventListener('blur', () => call('page_lost_focus'));
    for (const event of ['resize', 'focus', 'orientationchange'])
        window.addEventListener(event, () => call('page_stirred'));
    for (const wish of ['(prefers-color-scheme: dark)', '(prefers-reduced-motion: reduce)'])
        window.matchMedia(wish).addEventListener('change', () => call('page_stirred'));
    if (window.visualViewport)
        window.visualViewport.addEventListener('resize', () => call('page_stirred'));

    // --- files that are dropped on the page, or chosen ---
    async function take_in(files) {
        for (const file of files) {
            const path = '/dropped/' + file.name.replace(/[^\w.-]/g, '_');
            FS.writeFile(path, new Uint8Array(await file.arrayBuffer()));
            callText('page_dropped', path);
        }
    }
    document.addEventListener('dragover', (event) => event.preventDefault());
    document.addEventListener('drop', (event) => {
        event.preventDefault();
        take_in(event.dataTransfer.files);
    });
    chosen.addEventListener('change', () => {
        take_in([...chosen.files]);
        chosen.value = '';
    });

    const shapes = ['default', 'text', 'move', 'ns-resize', 'ew-resize', 'nesw-resize', 'nwse-resize',
                    'pointer', 'not-allowed'];
    Module.page = {
        width: () => Math.max(1, Math.round(canvas.clientWidth)),
        height() { // less while keys are drawn on the screen
            const whole = document.documentElement.clientHeight;
            const free = window.visualViewport ? Math.min(whole, window.visualViewport.height) : whole;
            return Math.max(1, Math.round(free));
        },
        pixels: () => Math.min(3, window.devicePixelRatio || 1),
        fit() {
            const pixels = this.pixels();
            const width = Math.round(this.width() * pixels);
            const height = Math.round(this.height() * pixels);
            if (canvas.width !== width || canvas.height !== height) {
                canvas.width = width;
                canvas.height = height;
            }
            canvas.style.height = this.height() + 'px';
        },
        cursor: (shape) => { canvas.style.cursor = shape < 0 ? 'none' : shapes[shape] || 'default'; },
        chooseFile: () => chosen.click(),
        wishes: (query) => window.matchMedia(query).matches,
        asksForDigits: false, // said anew in every frame
        /** Told at the end of a frame: whether a text field has the keyboard. */
        wantsText(wants, byTouch) {
            wantsTyping = wants && byTouch;
            typed.inputMode = this.asksForDigits ? 'decimal' : 'text';
            this.asksForDigits = false;
            if (wantsTyping) typed.focus({preventScroll: true});
            else if (document.activeElement === typed) canvas.focus({preventScroll: true});
        },
        copy(text) {
            const refused = () => say('The browser does not let this page copy.');
            if (navigator.clipboard) navigator.clipboard.writeText(text).catch(refused);
            else refused();
        },
        fullScreen() {
            if (document.fullscreenElement) document.exitFullscreen();
            else if (document.documentElement.requestFullscreen)
                document.documentElement.requestFullscreen().catch(() => {});
        },
    };

    // --- what is kept: the person's folder lies in the browser's storage ---
    let changed = false;
    let keeping = false;
    let keeps = true;
    const handed_out = new Set();
    function note(path) {
        if (!path || !path.startsWith(home))
            return;
        const isForPerson = !path.startsWith(kept) || /\.(jsonl|png|svg)$/.test(path);
        const isUnfinished = /\.part\d*(\/|$)/.test(path); // or waits in a folder for others
        if (isForPerson && !isUnfinished) handed_out.add(path);
        else if (isForPerson) return;
        else changed = true;
        setTimeout(after_change, 0);
    }
    function after_change() {
        for (const path of handed_out) hand_out(path);
        handed_out.clear();
        if (!changed || keeping || !keeps)
            return;
        changed = false;
        keeping = true;
        FS.syncfs(false, (fault) => {
            keeping = false;
            if (fault) not_kept();
            else if (changed) setTimeout(after_change, 0);
        });
    }
    function not_kept() {
        say('This browser has no room left for your answers: they are lost when the page is closed. '
            + 'Export your record, or make room in the browser\u2019s settings for this site.');
    }
    /** Gives the person a file that the program has written for them. */
    async function hand_out(path) {
        const name = path.split('/').pop();
        if (!FS.analyzePath(path).exists || name.startsWith('.') || FS.isDir(FS.stat(path).mode))
            return;
        const bytes = FS.readFile(path);
        FS.unlink(path);
        const blob = name.endsWith('.png') ? await painted(bytes) : new Blob([bytes]);
        const link = document.createElement('a');
        link.href = URL.createObjectURL(blob);
        link.download = name;
        link.click();
        // To see, it stands where it was asked for; this is for who listens to the page.
        document.getElementById('told').textContent = name + ' is given to you as a download.';
        setTimeout(() => URL.revokeObjectURL(link.href), 60000);
    }
    /** The pixels of a picture that the program has written as SVG. */
    async function painted(svg) {
        const picture = new Image();
        picture.src = URL.createObjectURL(new Blob([svg], {type: 'image/svg+xml'}));
        await picture.decode();
        const sheet = document.createElement('canvas');
        sheet.width = picture.naturalWidth;
        sheet.height = picture.naturalHeight;
        sheet.getContext('2d').drawImage(picture, 0, 0);
        URL.revokeObjectURL(picture.src);
        return new Promise((done) => sheet.toBlob(done, 'image/png'));
    }
    function watch_files() {
        const path_of = (one) => typeof one === 'string' ? one : FS.getPath(one);
        const watch = (name, path_for) => {
            const before = FS[name];
            FS[name] = (...args) => {
                const path = path_for(...args);
                const result = before.apply(FS, args);
                if (path) note(path_of(path));
                return result;
            };
        };
        watch('close', (stream) => (stream.flags & 3 ? stream.path : ''));
        watch('rename', (from, to) => to);
        watch('unlink', (path) => path);
        watch('write', (stream) => (stream.path.startsWith(kept) ? stream.path : ''));
    }

    // The program's data are already to be loaded before it runs.
    Module.preRun = [...(Module.preRun || []), () => {
        ENV.HOME = home;
        FS.mkdirTree(home);
        FS.mkdirTree('/dropped');
        watch_files();
        addRunDependency('what was kept');
        const go_on = () => removeRunDependency('what was kept');
        const forgets = (sentence) => { keeps = false; say(sentence); go_on(); };
        const take_up = () => {
            try {
                FS.mount(IDBFS, {}, home);
                if (navigator.storage && navigator.storage.persist) navigator.storage.persist();
                FS.syncfs(true, (fault) => fault
                    ? forgets('This browser keeps nothing for this page (a private window does that): '
                              + 'export your record before you close it.')
                    : go_on());
            } catch (fault) {
                forgets('This browser keeps nothing for this page: export your record before you close it.');
            }
        };
        if (!navigator.locks)
            return take_up();
        // Whoever holds the lock keeps the record; it is given back when the tab is closed.
        navigator.locks.request('steelyard record', {ifAvailable: true}, (lock) => {
            if (lock) {
                take_up();
                return new Promise(() => {});
            }
            forgets('Steelyard is open in another tab already: what you do in this one is not kept.');
        });
    }];
    Module.onRuntimeInitialized = () => {
        running = true;
        document.getElementById('coming').hidden = true;
        canvas.focus();
    };
    const told = [];
    Module.printErr = (line) => { told.push(line); console.warn(line); };
    Module.onAbort = () => give_up(!running ? MISSING
        : 'Steelyard has stopped: ' + (told.pop() || 'no reason was given')
          + '. Load the page again; what was kept is still there.');
    Module.quit = (status) => { if (status !== 0) give_up(told.join(' ')); };
    window.addEventListener('error', (event) => {
        if (!running) give_up(MISSING);
    });
    window.addEventListener('unhandledrejection', () => {
        if (!running) give_up(MISSING);
    });
    Module.canvas = canvas;
    const asked = new URLSearchParams(location.search);
    Module.arguments = asked.has('narration') ? ['--narration', '/narration'] : [];
})();
