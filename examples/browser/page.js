"use strict";
(() => {
    const at = (id) => document.getElementById(id);
    const parts = JSON.parse(at("parts").textContent);
    const text = at("text");
    const own = -1;  // of the list: a text that is no demo station

    // What is shown.
    let file_name = "";   // as messages and saved files call it
    let untouched = "";   // the text as it was loaded
    let report = null;    // the answer that is shown
    let reported = "";    // the text it was made of
    let fault_line = 0;

    // --- the text and its lines ---------------------------------------------------------------------------------
    let drawn = "";
    function draw_lines() {
        const count = text.value.split("\n").length;
        const wanted = count + ":" + fault_line;
        if (wanted !== drawn) {
            drawn = wanted;
            at("lines").replaceChildren(...Array.from({ length: count }, (_, i) => {
                const number = document.createElement(i + 1 === fault_line ? "b" : "span");
                number.textContent = i + 1;
                return number;
            }));
        }
        at("lines").scrollTop = text.scrollTop;
    }
    function load(name, content, state) {
        file_name = name;
        text.value = content;
        untouched = text.value;
        text.scrollTop = 0;
        say_fault(null);
        say(state);
        draw_stale();
    }
    function may_replace() {
        return text.value === untouched || confirm("Replace the edited station file? What was changed is lost.");
    }
    function go_to(line, column) {
        const lines = text.value.split("\n");
        let start = 0;
        for (let i = 0; i < line - 1 && i < lines.length; ++i) start += lines[i].length + 1;
        const whole = lines[line - 1] || "";
        // columns count characters, not the units of a script's texts
        const from = start + Array.from(whole).slice(0, Math.max(0, column - 1)).join("").length;
        text.focus({ preventScroll: true });
        text.setSelectionRange(Math.min(from, start + whole.length), start + whole.length);
        const height = parseFloat(getComputedStyle(text).lineHeight);
        text.scrollTop = Math.max(0, (line - 4) * height);
        text.scrollLeft = 0;
        text.scrollIntoView({ block: "nearest" });
    }

    // --- what is said -------------------------------------------------------------------------------------------
    function say(what) {
        at("state").textContent = what;
    }
    function say_fault(fault) {
        fault_line = fault ? fault.line : 0;
        const box = at("fault");
        box.replaceChildren();
        draw_lines();
        if (!fault) return;
        const where = document.createElement("b");
        where.textContent = fault.line ? "Line " + fault.line + ", column " + fault.column + ": " : "No report: ";
        const why = document.createElement("p");
        why.append(where, fault.reason + (fault.nearest ? "; nearest: \"" + fault.nearest + "\"" : ""));
        box.append(why);
        if (fault.line) {
            const there = document.createElement("button");
            there.type = "button";
            there.textContent = "Go to line " + fault.line;
            there.addEventListener("click", () => go_to(fault.line, fault.column));
            box.append(there);
        }
        box.scrollIntoView({ block: "nearest" });
    }
    function draw_stale() {
        at("stale").hidden = report === null || text.value === reported;
    }

    // --- the worker ---------------------------------------------------------------------------------------------
    let worker = null;
    let waiting = null;  // the question that is being worked on
    let questions = 0;
    async function unpacked(base64) {
        const packed = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
        const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
        return new Response(stream).arrayBuffer();
    }
    async function start_worker() {
        const address = URL.createObjectURL(new Blob([parts.worker], { type: "text/javascript" }));
        const started = new Worker(address);
        started.onmessage = (event) => answered(event.data);
        started.onerror = (event) => answered({ question: waiting && waiting.question, broken: event.message || "the worker failed" });
        started.postMessage({ wasm: await unpacked(parts.wasm) });
        return started;
    }
    function stop_worker() {
        const old = worker;
        worker = null;
        if (old) old.then((w) => w.terminate(), () => {});
    }
    function today() {
        const now = new Date();
        return now.getFullYear() * 10000 + (now.getMonth() + 1) * 100 + now.getDate();
    }
    async function ask() {
        if (waiting) return;
        const asked = { text: text.value, name: file_name, date: today(), whole: true };
        const mine = { question: ++questions, asked, since: performance.now(), clock: 0 };
        waiting = mine;
        say_fault(null);
        busy(true);
        try {
            if (!worker) worker = start_worker();
            const w = await worker;
            if (waiting === mine) w.postMessage({ question: mine.question, asked });
        } catch (e) {
            answered({ question: mine.question, broken: String((e && e.message) || e) });
        }
    }
    function busy(is) {
        at("make").disabled = is;
        at("stop").hidden = !is;
        if (waiting) clearInterval(waiting.clock);
        if (!is) return;
        say("Computing ...");
        const mine = waiting;
        // said again now and then only, so that a screen reader is not flooded
        mine.clock = setInterval(
            () => say("Computing ... " + Math.round((performance.now() - mine.since) / 1000) + " s"), 5000);
    }
    function answered(said) {
        if (!waiting || said.question !== waiting.question) return;
        const mine = waiting;
        busy(false);
        waiting = null;
        if (said.broken) {
            stop_worker();  // a program that broke off is not asked again
            say("");
            say_fault({ line: 0, column: 0, nearest: "", reason: "the program broke off (" + said.broken + ")" });
            return;
        }
        if (said.answer.error) {
            say("");
            say_fault(said.answer.error);
            return;
        }
        report = said.answer;
        reported = mine.asked.text;
        show((performance.now() - mine.since) / 1000);
    }

    // --- the report ---------------------------------------------------------------------------------------------
    const shown = at("shown");
    let watch = null;
    let is_new = false;  // and not yet brought into view
    function show(seconds) {
        at("report").hidden = false;
        at("report-title").textContent = "Report: " + report.name;
        for (const beside of ["card", "sheet"]) at("save-" + beside).disabled = report[beside] === "";
        shown.srcdoc = report.page;  // sandboxed: nothing in it can run
        draw_stale();
        say("The report stands below. It took " + seconds.toFixed(1) + " s.");
        at("report-title").focus({ preventScroll: true });
        is_new = true;
    }
    shown.addEventListener("load", () => {
        if (watch) watch.disconnect();
        const page = shown.contentDocument;
        if (!page || !page.body) return;
        const fit = () => {
            shown.style.height = Math.ceil(page.body.getBoundingClientRect().height) + 4 + "px";
        };
        watch = new ResizeObserver(fit);
        watch.observe(page.body);
        fit();
        // only now is there height enough to bring its head to the top
        if (is_new) at("report-title").scrollIntoView({ block: "start" });
        is_new = false;
    });
    function save(content, name, type) {
        const link = document.createElement("a");
        link.href = URL.createObjectURL(new Blob([content], { type }));
        link.download = name;
        link.click();
        setTimeout(() => URL.revokeObjectURL(link.href), 10000);
    }
    const stem = () => file_name.replace(/\.[^.]*$/, "") || "station";

    // --- what can be done ---------------------------------------------------------------------------------------
    parts.stations.forEach((s, i) => at("demo").add(new Option(s.title, i)));
    const own_option = new Option("(a file of your own)", own);
    own_option.hidden = true;
    at("demo").add(own_option);
    let chosen = "0";
    at("demo").addEventListener("change", () => {
        const station = parts.stations[at("demo").value];
        if (!station || !may_replace()) {
            at("demo").value = chosen;
            return;
        }
        chosen = at("demo").value;
        at("file").value = "";
        load(station.file, station.text, "");
    });
    at("file").addEventListener("change", async () => {
        const file = at("file").files[0];
        if (!file) return;
        if (!may_replace()) {
            at("file").value = "";
            return;
        }
        try {
            if (file.size > 1 << 20) throw new Error("it is larger than 1 MiB");
            const content = new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer());
            own_option.hidden = false;
            at("demo").value = chosen = String(own);
            load(file.name, content, "Loaded: " + file.name);
        } catch (e) {
            const why = e instanceof TypeError ? "it is no text in UTF-8" : e.message;
            say("");
            say_fault({ line: 0, column: 0, nearest: "", reason: "the file " + file.name + " cannot be read: " + why });
        }
    });
    text.addEventListener("input", () => {
        fault_line = 0;
        draw_lines();
        draw_stale();
    });
    text.addEventListener("scroll", draw_lines);
    text.addEventListener("keydown", (event) => {
        if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
        event.preventDefault();
        ask();
    });
    at("form").addEventListener("submit", (event) => {
        event.preventDefault();
        ask();
    });
    at("stop").addEventListener("click", () => {
        busy(false);
        waiting = null;
        stop_worker();
        say("Stopped.");
        at("make").focus();
    });
    at("keep").addEventListener("click", () => {
        save(text.value, stem() + ".toml", "application/toml");
        untouched = text.value;
    });
    at("print").addEventListener("click", () => shown.contentWindow.print());
    at("save-page").addEventListener("click", () => save(report.page, stem() + ".html", "text/html"));
    at("save-text").addEventListener("click", () => save(report.text, stem() + ".txt", "text/plain"));
    at("save-json").addEventListener("click", () => save(report.json, stem() + ".json", "application/json"));
    at("save-card").addEventListener("click", () => save(report.card, stem() + "-card.html", "text/html"));
    at("save-sheet").addEventListener("click", () => save(report.sheet, stem() + "-sheet.html", "text/html"));
    addEventListener("beforeunload", (event) => {
        if (text.value !== untouched) event.preventDefault();
    });

    const first = Math.max(0, parts.stations.findIndex((s) => s.file === "gate_shop.toml"));
    at("demo").value = chosen = String(first);
    load(parts.stations[first].file, parts.stations[first].text, "");
    if (typeof DecompressionStream === "undefined" || typeof WebAssembly === "undefined") {
        at("make").disabled = true;
        say_fault({ line: 0, column: 0, nearest: "", reason: "this browser is too old for the page; one of 2023 or later is needed" });
    }
})();
