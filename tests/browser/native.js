// What the native program says to a station file, and a small set of checks.
"use strict";
const { spawnSync } = require("child_process");
const fs = require("fs");
const os = require("os");
const path = require("path");

// status, said, complained; json and page where it wrote them
function native_answer(program, file) {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), "weldloop_native_"));
    try {
        const ran = spawnSync(program, ["assess", "--whole", file, "--out", folder], { encoding: "utf8" });
        if (ran.error) throw ran.error;
        const stem = path.join(folder, path.basename(file, ".toml"));
        const written = (ending) => (fs.existsSync(stem + ending) ? fs.readFileSync(stem + ending, "utf8") : null);
        return { status: ran.status, said: ran.stdout, complained: ran.stderr, json: written(".json"), page: written(".html") };
    } finally {
        fs.rmSync(folder, { recursive: true, force: true });
    }
}

// The page that another word of the program writes for a station: "card", "sheet".
function native_page(program, word, file) {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), "weldloop_native_"));
    try {
        const ran = spawnSync(program, [word, file, "--out", folder], { encoding: "utf8" });
        if (ran.error) throw ran.error;
        return fs.readFileSync(path.join(folder, path.basename(file, ".toml") + "-" + word + ".html"), "utf8");
    } finally {
        fs.rmSync(folder, { recursive: true, force: true });
    }
}

// The day of a native report as the compiled program takes it.
function date_of(json) {
    return Number(JSON.parse(json).date.replace(/-/g, ""));
}

let faults = 0;
function check(holds, what) {
    if (holds) return;
    ++faults;
    console.log("FAULT: " + what);
}
// Whether two texts are the same, and if not, where they part.
function check_same(got, wanted, what) {
    if (got === wanted) return;
    let i = 0;
    while (i < Math.min(got.length, wanted.length) && got[i] === wanted[i]) ++i;
    check(false, what + " differ at " + i + ": " + JSON.stringify(got.slice(i, i + 60)) + ", native " +
        JSON.stringify(wanted.slice(i, i + 60)));
}
function finish() {
    console.log(faults === 0 ? "all hold" : faults + " faults");
    process.exitCode = faults === 0 ? 0 : 1;
}

const stations_in = (folder) => fs.readdirSync(folder).filter((f) => f.endsWith(".toml")).sort()
    .map((f) => path.join(folder, f));

module.exports = { native_answer, native_page, date_of, check, check_same, finish, stations_in };
