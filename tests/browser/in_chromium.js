// node in_chromium.js PROGRAM STATIONS BUILT CHROMIUM: the page as its user meets it, against the native program.
"use strict";
const fs = require("fs");
const os = require("os");
const path = require("path");
const { native_answer, native_page, check, check_same, finish, stations_in } = require("./native.js");
const { open_page } = require("./chromium.js");

const [program, stations, built, chromium] = process.argv.slice(2);
const file = path.join(built, "station.html");
const text_is = (text) => "(() => { const t = document.getElementById('text'); t.value = " + JSON.stringify(text) +
    "; t.dispatchEvent(new Event('input')); })()";
const press = (id) => "document.getElementById('" + id + "').click()";
const is_idle = "!document.getElementById('make').disabled";
const fault_text = "document.getElementById('fault').textContent";
const state_text = "document.getElementById('state').textContent";

async function make(page) {
    // in one go: a small station is done before one could ask again
    check(await page.value(press("make") + ", !document.getElementById('stop').hidden && " + state_text +
        ".startsWith('Computing')"), "nothing says that it computes");
    await page.until(is_idle);
}

// Every demo station gives the bytes of the native program.
async function same_as_native(page) {
    const names = await page.value("[...document.getElementById('demo').options].map((o) => o.textContent)");
    const files = stations_in(stations);
    check(files.length >= 4 && names.length === files.length + 1, "demo stations: " + names);
    for (const [i, station] of files.entries()) {
        const stem = path.basename(station, ".toml");
        await page.value("(() => { const d = document.getElementById('demo'); d.value = '" + i +
            "'; d.dispatchEvent(new Event('change')); })()");
        check_same(await page.value("document.getElementById('text').value"), fs.readFileSync(station, "utf8"), stem + ", file");
        let native = native_answer(program, station);
        await make(page);
        check(await page.value(fault_text) === "", stem + ": " + await page.value(fault_text));
        console.log(stem + ": " + await page.value(state_text));
        const json = (await page.saved("#save-json", stem + ".json")).toString("utf8");
        if (JSON.parse(json).date !== JSON.parse(native.json).date) native = native_answer(program, station);  // midnight passed
        check_same(json, native.json, stem + ", JSON");
        check_same((await page.saved("#save-page", stem + ".html")).toString("utf8"), native.page, stem + ", page");
        check_same(await page.value("document.getElementById('shown').srcdoc"), native.page, stem + ", page shown");
        const text = (await page.saved("#save-text", stem + ".txt")).toString("utf8");
        check(text.length > 1000, stem + ": a text of " + text.length);
        for (const word of ["card", "sheet"])
            check_same((await page.saved("#save-" + word, stem + "-" + word + ".html")).toString("utf8"), native_page(program, word, station),
                stem + ", " + word);
        check_same(text, native.said.slice(0, text.length), stem + ", text");
        check(await page.value("document.getElementById('report-title').textContent") === "Report: " + JSON.parse(native.json).name,
            stem + ": title");
        await page.until("document.getElementById('shown').contentDocument.body.textContent.includes('Sources')");
    }
}

// A fault is said at its line; the button goes there; the report that stood there still stands.
async function fault_at_line(page) {
    const good = fs.readFileSync(path.join(stations, "gate_shop.toml"), "utf8");
    const bad = good.replace("current = \"230 A\"", "curent = \"230 A\"");
    const line = bad.split("\n").findIndex((l) => l.startsWith("curent")) + 1;
    await page.value(text_is(bad));
    check(await page.value("!document.getElementById('stale').hidden"), "a changed file, and the report is not called old");
    await make(page);
    const said = await page.value(fault_text);
    check(said.startsWith("Line " + line + ", column 1: ") && said.includes("curent") && said.includes("nearest: \"current\""), said);
    check(await page.value("document.getElementById('fault').getAttribute('role')") === "alert", "a fault is not announced");
    check(await page.value("document.querySelector('#lines b').textContent.trim()") === String(line), "the mark beside the text");
    await page.value("document.querySelector('#fault button').click()");
    const selected = await page.value("(() => { const t = document.activeElement; return t.value.slice(t.selectionStart, t.selectionEnd); })()");
    check(selected.startsWith("curent = "), "selected: " + selected);
    await page.value(text_is(good));
    await make(page);
    check(await page.value(fault_text) === "", "a mended file");
}

// What a file says is never markup of the page or of the report.
async function hostile_text(page) {
    const good = fs.readFileSync(path.join(stations, "gate_shop.toml"), "utf8");
    const evil = "</title><script>top.hit=1</script><img src=x onerror=top.hit=1>$& {{script}}";  // a name has 80 at most
    await page.value("window.hit = 0");
    await page.value(text_is(good.replace("\"Gate shop, bench 1\"", () => "'" + evil + "'")
        .replace("\"work clamp\"\nclamp", () => "'" + evil + "'\nclamp")));
    await make(page);
    check(await page.value(fault_text) === "", "hostile names: " + await page.value(fault_text));
    check(await page.value("document.getElementById('report-title').textContent") === "Report: " + evil, "the name as it was written");
    await page.until("document.getElementById('shown').contentDocument.body.textContent.includes('Sources')");
    check(await page.value("document.getElementById('shown').contentDocument.querySelectorAll('script, img, #hit').length") === 0,
        "markup in the report");
    check(await page.value("document.querySelectorAll('img, #hit').length") === 0, "markup in the page");
    await page.value(text_is("name = \"x\"\n\"<img src=x onerror=top.hit=1>\" = 1\n"));
    await make(page);
    check((await page.value(fault_text)).includes("<img"), "a fault names the key: " + await page.value(fault_text));
    check(await page.value("document.querySelectorAll('img').length") === 0, "markup in the fault");
    check(await page.value("window.hit") === 0, "a script of the file ran");
}

// A file of one's own is loaded and keeps its name; what was typed is not lost unasked; what is no text is refused.
async function own_file(page) {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), "weldloop_own_"));
    const demo = fs.readFileSync(path.join(stations, "trailer_frame.toml"), "utf8");
    const content = demo.replace(/^name = .*$/m, "name = \"Prüfstand 3\"").replace(/\n/g, "\r\n");
    const own = path.join(folder, "my_bench.toml");
    const broken = path.join(folder, "photo.toml");
    fs.writeFileSync(own, content);
    fs.writeFileSync(broken, Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0x00]));
    try {
        await page.value(text_is("# typed"));
        page.agrees = false;
        await page.give("#file", own);
        await page.until("document.getElementById('file').value === ''", 10);
        check(await page.value("document.getElementById('text').value") === "# typed", "what was typed is lost");
        check(page.questions().length === 1 && page.questions()[0].includes("lost"), "asked: " + page.questions());
        page.agrees = true;
        await page.give("#file", own);
        await page.until(state_text + " === 'Loaded: my_bench.toml'", 10);
        await make(page);
        check(await page.value("document.getElementById('report-title').textContent") === "Report: Prüfstand 3", "the report of the file");
        const native = native_answer(program, own);
        check_same((await page.saved("#save-page", "my_bench.html")).toString("utf8"), native.page, "own file, page");
        await page.give("#file", broken);
        await page.until(fault_text + " !== ''", 10);
        check((await page.value(fault_text)).includes("photo.toml cannot be read: it is no text in UTF-8"), await page.value(fault_text));
        check((await page.value("document.getElementById('text').value")).includes("Prüfstand"), "a refused file takes the text away");
    } finally {
        fs.rmSync(folder, { recursive: true, force: true });
    }
}

// It can be stopped, and made again after that.
async function stopped(page) {
    await page.value(text_is(fs.readFileSync(path.join(stations, "gate_shop.toml"), "utf8")));
    await page.value(press("make") + ", " + press("stop"));
    check(await page.value(state_text) === "Stopped." && await page.value(is_idle), "not stopped");
    await make(page);
    check((await page.value(state_text)).startsWith("The report stands below."), await page.value(state_text));
}

// Whatever can be used has a name; keys alone reach it.
async function usable(page) {
    const { nodes } = await page.send("Accessibility.getFullAXTree");
    const used = nodes.filter((n) => !n.ignored && ["button", "textbox", "combobox", "Iframe"].includes(n.role && n.role.value));
    check(used.length >= 8, "only " + used.length + " things to use");
    for (const n of used) check(n.name && n.name.value !== "", "a " + n.role.value + " without a name");
    check(await page.value("document.querySelectorAll('[tabindex]:not([tabindex=\"-1\"])').length") === 0, "an order of its own");
}

// Whatever a script tried, nothing gets out.
async function closed(page) {
    const refused = await page.value("new Promise((done) => { addEventListener('securitypolicyviolation', " +
        "(e) => done(e.effectiveDirective)); fetch('http://127.0.0.1:9/').catch(() => {}); setTimeout(() => done('nothing'), 5000); })");
    check(refused === "connect-src", "the policy refuses " + refused);
}

async function fits(page, width) {
    const widths = "[document, document.getElementById('shown').contentDocument].map((d) => d.documentElement.scrollWidth)";
    for (const w of await page.value(widths)) check(w <= width, "at " + width + " px it is " + w + " wide");
    const inside = await page.value("(() => { const e = document.getElementById('shown').contentDocument.documentElement;" +
        " return [e.scrollHeight, document.getElementById('shown').clientHeight]; })()");
    check(inside[0] <= inside[1], "the report is cut: " + inside);
}

(async () => {
    const size = fs.statSync(file).size;
    console.log("page: " + size + " bytes");
    for (const width of [1200, 360]) {
        const page = await open_page(chromium, file, { width });
        try {
            await same_as_native(page);
            await fits(page, width);
            if (width > 1000) {
                await fault_at_line(page);
                await hostile_text(page);
                await stopped(page);
                await own_file(page);
                await usable(page);
            }
            check(page.foreign().length === 0, "asked for: " + page.foreign());
            check(page.complaints().length === 0, "complaints: " + page.complaints());
            await closed(page);
        } finally {
            await page.close();
        }
    }
    finish();
})().catch((e) => {
    console.log("FAULT: " + (e.stack || e));
    process.exit(1);
});
