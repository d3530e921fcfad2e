// The worker's side: starts the compiled program once, then answers one question after the other.
let starting = null;
self.onmessage = async (event) => {
    const { wasm, question, asked } = event.data;
    try {
        if (wasm) starting = weldloop_engine({ wasmBinary: wasm, printErr: () => {} });
        const engine = await starting;
        if (asked) self.postMessage({ question, answer: report_of(engine, asked) });
    } catch (e) {
        self.postMessage({ question, broken: String((e && e.message) || e) });
    }
};
