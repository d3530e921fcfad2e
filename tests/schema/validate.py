"""validate.py SCHEMA FOLDER: holds every report_*.json of FOLDER against SCHEMA, and SCHEMA's enumerations against the
words of the library in words.json. Also the schema itself: it refuses what it must, and has no key that no report has.
Ends with 77 where the Python package jsonschema (Debian: python3-jsonschema) is missing."""

import copy
import json
import pathlib
import sys

try:
    import jsonschema
except ImportError:
    print("no Python package jsonschema")
    sys.exit(77)

schema = json.loads(pathlib.Path(sys.argv[1]).read_text(encoding="utf-8"))
folder = pathlib.Path(sys.argv[2])
reports = {p.name: json.loads(p.read_text(encoding="utf-8")) for p in sorted(folder.glob("report_*.json"))}
words = json.loads((folder / "words.json").read_text(encoding="utf-8"))

faults = []
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
if len(reports) < 10:
    faults.append(f"{len(reports)} reports only")
for name, report in reports.items():
    for error in validator.iter_errors(report):
        faults.append(f"{name}: {list(error.absolute_path)}: {error.message[:300]}")

# every sentence of a caution has its id, and every flag
def paired(value, where):
    if isinstance(value, dict):
        for sentences, ids in (("cautions", "caution_ids"), ("flags", "flag_ids")):
            if sentences in value and len(value[sentences]) != len(value[ids]):
                faults.append(f"{where}: {len(value[sentences])} {sentences}, {len(value[ids])} {ids}")
        for key, below in value.items():
            paired(below, f"{where}/{key}")
    elif isinstance(value, list):
        for below in value:
            paired(below, where)


for name, report in reports.items():
    paired(report, name)

# the words of the code and of the schema are the same, in the same order
listed = {name: part["enum"] for name, part in schema["$defs"].items() if set(part) == {"enum"}}
for name in sorted(set(words) | set(listed)):
    if words.get(name) != listed.get(name):
        faults.append(f"{name}: the library has {words.get(name)}, the schema {listed.get(name)}")


# every object is closed, and every key of it stands in some report
def objects_in(part, where):
    if isinstance(part, dict):
        if "properties" in part and part.get("type") == "object":
            yield where, part
        for key, below in part.items():
            if key not in ("if", "then", "else"):
                yield from objects_in(below, f"{where}/{key}")
    elif isinstance(part, list):
        for below in part:
            yield from objects_in(below, where)


def keys_in(value):
    if isinstance(value, dict):
        yield from value
    for below in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from keys_in(below)


written = {key for report in reports.values() for key in keys_in(report)}
for where, part in objects_in(schema, "#"):
    if part.get("additionalProperties") is not False:
        faults.append(f"{where} is open")
    for key in part["properties"]:
        if key not in written:
            faults.append(f"{where}: no report has the key {key}")


# what is wrong is refused
def refused(what, change):
    wrong = copy.deepcopy(next(r for r in reports.values() if r["outcome"] == "solved" and r["findings"]))
    change(wrong)
    if validator.is_valid(wrong):
        faults.append(f"the schema lets through {what}")


refused("another schema", lambda r: r.update(schema="weldloop-station-report/0"))
refused("a key nobody knows", lambda r: r.update(colour="red"))
refused("a key too many in a part", lambda r: r["parts"][0].update(colour="red"))
refused("a part without a verdict's id", lambda r: r["parts"][0].pop("verdict_id"))
refused("an id nobody knows", lambda r: r["findings"][0].update(id="something_else"))
refused("words for an id", lambda r: r["parts"][0].update(verdict_id="within limit"))
refused("null for a number", lambda r: r.update(total_drop_V=None))
refused("an open loop with numbers", lambda r: r.update(outcome="open circuit", conducts=False))
refused("a probability above one", lambda r: r["parts"][0]["limits"][0].update(exceeds_probability=1.5))
refused("a peak below absolute zero", lambda r: r["parts"][0]["places"][0]["peak_degC"].update(low=-300))

for fault in faults[:20]:
    print("FAULT:", fault)
if len(faults) > 20:
    print(f"and {len(faults) - 20} more")
print(f"{len(reports)} reports, {len(words)} enumerations")
sys.exit(1 if faults else 0)
