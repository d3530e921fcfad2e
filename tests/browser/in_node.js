// node in_node.js PROGRAM STATIONS BUILT CALL.js: the compiled program under node against the native one.
"use strict";
const fs = require("fs");
const path = require("path");
const { native_answer, native_page, date_of, check, check_same, finish, stations_in } = require("./native.js");

const [program, stations, built, call] = process.argv.slice(2);
const report_of = new Function(fs.readFileSync(call, "utf8") + "\nreturn report_of;")();

(async () => {
    const engine = await require(path.resolve(built, "engine.js"))({ wasmBinary: fs.readFileSync(path.join(built, "engine.wasm")) });
    const answer_to = (text, more = {}) => report_of(engine, { text, name: "bench.toml", date: 0, whole: true, ...more });

    check(stations_in(stations).length >= 4, "four demo stations at least");
    for (const file of stations_in(stations)) {
        const name = path.basename(file);
        const native = native_answer(program, file);
        check(native.json !== null, name + " has no native report: " + native.complained);
        if (native.json === null) continue;
        const began = Date.now();
        const answer = answer_to(fs.readFileSync(file, "utf8"), { name, date: date_of(native.json) });
        console.log(name + ": " + (Date.now() - began) + " ms");
        check(!answer.error, name + ": " + JSON.stringify(answer.error));
        if (answer.error) continue;
        check_same(answer.json, native.json, name + ", JSON");
        check_same(answer.page, native.page, name + ", page");
        check_same(answer.text, native.said.slice(0, answer.text.length), name + ", text");
        for (const word of ["card", "sheet"]) check_same(answer[word], native_page(program, word, file), name + ", " + word);
    }

    // What is at fault has its place, counted by hand here; nothing is thrown, and the next question is answered.
    const good = fs.readFileSync(path.join(stations, "gate_shop.toml"), "utf8");
    const faulty = [
        ["a mistyped key", "name = \"x\"\n[job]\nprocess = \"gmaw\"\ncurent = \"230 A\"\n", 4, 1],
        ["no TOML", "name = \"x\"\n[job\n", 2, null],
        ["a unit of something else", good.replace("current = \"230 A\"", "current = \"230 V\""),
            good.split("\n").findIndex((line) => line.startsWith("current")) + 1, null],
        ["a broken bracket", "[=", 1, null],
        ["nothing", "", null, null],
        ["zeros", "\0\0\0", 1, null],
        ["too much", "#".repeat((1 << 20) + 1), 0, 0],
        ["deep nesting", "a = " + "[".repeat(50000), 1, null],
    ];
    for (const [what, text, line, column] of faulty) {
        const { error } = answer_to(text);
        check(error, what + " is answered");
        if (!error) continue;
        check(error.id === 107, what + ": id " + error.id);
        check(error.reason !== "", what + ": no reason");
        check(line === null || error.line === line, what + ": line " + error.line + ", not " + line);
        check(column === null || error.column === column, what + ": column " + error.column + ", not " + column);
    }
    check(answer_to(faulty[0][1]).error.nearest === "current", "the nearest word of a mistyped key");
    check(answer_to(good, { date: 20260231 }).error.id === 102, "a day that no calendar has");
    check(JSON.parse(answer_to(good).json).date === undefined, "a date that nobody gave");

    // A thousand questions leave no memory behind.
    const before = engine.HEAPU8.length;
    for (let i = 0; i < 1000; ++i) answer_to(faulty[0][1]);
    check(engine.HEAPU8.length === before, "memory grew from " + before + " to " + engine.HEAPU8.length);
    finish();
})();
