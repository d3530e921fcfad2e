// Calls the compiled program: the text of a station file in, an object out, as station_answer.hpp describes it.
// asked: text, name (of the file, as messages call it), date (as 20261126; 0: none), whole (the text holds everything)
function report_of(engine, asked) {
    const encoder = new TextEncoder();
    const held = [];
    const put = (text) => {
        const bytes = encoder.encode(text);
        const at = engine._malloc(bytes.length + 1);
        if (at === 0) throw new Error("out of memory");
        held.push(at);
        engine.HEAPU8.set(bytes, at);
        engine.HEAPU8[at + bytes.length] = 0;
        return { at, length: bytes.length };
    };
    try {
        const text = put(asked.text);
        const name = put(asked.name);
        const answer = engine._weldloop_report(text.at, text.length, name.at, asked.date, asked.whole ? 1 : 0);
        if (answer === 0) throw new Error("out of memory");
        held.push(answer);
        const bytes = engine.HEAPU8;  // asked for anew: the memory may have grown
        return JSON.parse(new TextDecoder().decode(bytes.subarray(answer, bytes.indexOf(0, answer))));
    } finally {
        for (const at of held) engine._free(at);
    }
}
