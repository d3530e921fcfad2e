"""Assesses station files from Python, with nothing but its standard library:

    python3 assess.py libweldloop_c.so bench.toml ...

prints of each what is said of it, what stands out and what to do first. Status 1: a file or station is refused."""

import ctypes
import json
import pathlib
import sys

INTERFACE = 1


class Refused(Exception):
    """A station file or station that cannot be; number is that of the library's error, 0 where it has none."""

    def __init__(self, text, number):
        super().__init__(text)
        self.number = number


class Weldloop:
    """The shared library at a path."""

    def __init__(self, path):
        # a path, never a bare name, which would be looked for elsewhere
        self._lib = lib = ctypes.CDLL(str(pathlib.Path(path).resolve()))
        # without these, pointers would be cut to an int
        for name, gives, takes in (
            ("weldloop_c_interface", ctypes.c_int, []),
            ("weldloop_version", ctypes.c_char_p, []),
            ("weldloop_assess", ctypes.c_void_p, [ctypes.c_char_p, ctypes.c_size_t, ctypes.c_char_p]),
            ("weldloop_has_report", ctypes.c_int, [ctypes.c_void_p]),
            ("weldloop_report", ctypes.c_char_p, [ctypes.c_void_p]),
            ("weldloop_error", ctypes.c_char_p, [ctypes.c_void_p]),
            ("weldloop_error_number", ctypes.c_int, [ctypes.c_void_p]),
            ("weldloop_release", None, [ctypes.c_void_p]),
        ):
            function = getattr(lib, name)
            function.restype, function.argtypes = gives, takes
        if lib.weldloop_c_interface() != INTERFACE:
            raise ImportError(f"{path} has interface {lib.weldloop_c_interface()}, not {INTERFACE}")

    @property
    def version(self):
        return self._lib.weldloop_version().decode()

    def assess(self, text, file_name="station"):
        """The report on a station file's text (str or bytes) as a dict. Other threads run meanwhile."""
        content = text.encode() if isinstance(text, str) else text
        result = self._lib.weldloop_assess(content, len(content), str(file_name).encode())
        try:
            if not self._lib.weldloop_has_report(result):
                raise Refused(
                    self._lib.weldloop_error(result).decode(errors="replace"), self._lib.weldloop_error_number(result)
                )
            return json.loads(self._lib.weldloop_report(result))
        finally:
            self._lib.weldloop_release(result)


def main(words):
    if len(words) < 2:
        print(__doc__, file=sys.stderr)
        return 2
    library = Weldloop(words[0])
    refused = False
    for file in words[1:]:
        try:
            report = library.assess(pathlib.Path(file).read_bytes(), file)
        except Refused as why:
            print(why, file=sys.stderr)
            refused = True
            continue
        print(f"{report['name']}: {report['answer']['says']}; weakest: {report['weakest']}")
        for finding in report["findings"]:
            print(f"  {finding['severity']}: {finding['id']}")
        for action in report["actions"]:
            print(f"  do first: {action['what']}")
            for caution in action["cautions"]:
                print(f"    ! {caution}")
    return 1 if refused else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
