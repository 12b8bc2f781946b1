#!/usr/bin/python3
"""Validates what the program prints as JSON, and what the counter answers, against docs/schema: tests/docs/schemas.py BINARY"""
import json
import os
import re
import subprocess
import sys
import tempfile
import urllib.error
import urllib.parse
import urllib.request

import jsonschema

STACK = "stack --json --from brockle-4:gallery "
COMMANDS = {
    "stack": [STACK + "--to curlew-8b:oil-in --keep sw-2 --best 4 --explain tee-2",
              STACK + "--to 'M13x1.25 female washer' --circuit feed",
              STACK + "--to plover-41:oil-in --to snipe-22:oil-in --keep sw-2",
              "stack --json --from 'M12x1.5 female washer' --to 'G1/4 female washer' --circuit feed",
              "stack --json --from dunlin-63:oil-out --to brockle-6:side-plate",
              "stack --json --from drumlow-8 --to whimbrel-90b:oil-in --best 2"],
    "plan": ["plan --json examples/" + name for name in
             ("tractor-pull.yaml", "twin-feed.yaml", "through-the-heater.yaml", "must-fail.yaml")],
    "check": ["check --json examples/plover-on-brockle.yaml", "check --json {layout}"],
    "bill": ["bill --json examples/plover-on-brockle.yaml", "bill --json examples/twin-feed.yaml"],
    "swap": ["swap --json examples/plover-on-brockle.yaml tee-2", "swap --json {layout} hose-4-ptfe"],
    "catalog-check": ["catalog check --json", "catalog check --json --catalog examples/doubtful-catalogue",
                      "catalog check --json --catalog examples/faulty-catalogue",
                      "catalog check --json --skip-bad --catalog examples/faulty-catalogue"],
    "mates": ["mates --json '-6 flare37 male'", "mates --json 'G1/4 female washer'"],
    "caliper": ["caliper --json '13.1 mm' --male", "caliper --json '8.9 mm' --female --pitch 1",
                "caliper --json '24.8 mm' --female --tpi 11", "caliper --json '90 mm'"],
    "thread": ["thread --json M10", "thread --json --tap '1/8 NPT'", "thread --json --tap R1/8", "thread --json '7/16-20 UNF-2A'",
               "thread --json --tap G1/4"],
    "oil": ["oil --json 15W-40 --at '100 C'", "oil --json --kv40 110 --kv100 14.7 --rho15 870 --at '-10 C'"],
    "drain": [f"drain --json --bore '{bore}' --slope '{slope}' --flow '{flow}' --oil 15W-40 --at '{heat}'" for bore, slope, flow, heat in
              (("15.9 mm", "20 deg", "2 L/min", "100 C"), ("8 mm", "1 deg", "9 L/min", "0 C"), ("16 mm", "60 deg", "0.01 L/min", "120 C"))],
    "feed": ["feed --json examples/quick/" + name for name in ("feed.yaml", "restrictor.yaml", "twin.yaml")],
    "siphon": ["siphon --json examples/quick/" + name for name in ("siphon.yaml", "level.yaml")],
    "catalog": ["catalog list --json", "catalog list --json --stock examples/stock.yaml"],
}

# What only the counter answers: schema, path, parameters, and a body or None. Words are read as they are typed, from the first letter on.
TYPED = ("brockle-4:gallery", "brockle", "1/8-27 NPT female", "M10 female", "M12x9 male", "1/8 NPT femle", "sw-2", "curlew-8c:oil-in", "xyzzy")
ASKED = [("read", "/api/read", {"words": words[:length], "for": wanted}, None)
         for words in TYPED for length in (0, 1, 3, 7, 99) for wanted in ("from", "to", "keep", "end")]
ASKED += [("shop", "/api/shop", {}, None), ("catalog", "/api/catalog", {"only": "given"}, None),
          ("flow", "/api/flow", {}, "{layout}"), ("flow", "/api/flow", {"oil": "20W-50"}, "examples/plover-on-brockle.yaml"),
          ("refusal", "/api/flow", {"oil": "mud"}, "{layout}"), ("refusal", "/api/stack", {"from": "x", "to": "y", "bore": "3"}, None),
          ("refusal", "/api/stack", {}, None), ("refusal", "/api/check", {}, "examples/tractor-pull.yaml"), ("refusal", "/nothing", {}, None),
          ("refusal", "/api/check", {}, None), ("refusal", "/api/oil", {"oil": "mud", "at": "100 C"}, None)]


def answers(binary, layout):
    """Yields schema, what was asked, and the answer of a counter of its own."""
    counter = subprocess.Popen([binary, "counter", "--port", "0"], stdout=subprocess.PIPE, text=True)
    try:
        home = re.search(r"http://[0-9.:]+", counter.stdout.readline()).group(0)
        for name, path, parameters, body in ASKED:
            data = None
            if body is not None:
                with open(body.replace("{layout}", layout), "rb") as file:
                    data = file.read()
            asked = path + ("?" + urllib.parse.urlencode(parameters) if parameters else "")
            try:
                with urllib.request.urlopen(urllib.request.Request(home + asked, data=data)) as answer:
                    status, text = answer.status, answer.read()
            except urllib.error.HTTPError as refused:
                status, text = refused.code, refused.read()
            assert (status >= 400) == (name == "refusal"), (asked, status, text[:300])
            yield name, asked, json.loads(text)
    finally:
        counter.terminate()
        counter.wait()
        counter.stdout.close()


def validator_of(name):
    with open(f"docs/schema/{name}.json", encoding="utf-8") as source:
        schema = json.load(source)
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def faults(validator, value):
    return [f"{list(fault.absolute_path)}: {fault.message[:200]}" for fault in validator.iter_errors(value)]


def main():
    binary = os.path.abspath(sys.argv[1])
    passed = failed = 0
    with tempfile.TemporaryDirectory() as folder:
        layout = os.path.join(folder, "layout.yaml")
        subprocess.run(f"{binary} {STACK.replace('--json ', '')} --to snipe-22:oil-in --keep sw-2 --format yaml --output {layout}",
                       shell=True, check=True)
        for name, commands in COMMANDS.items():
            validator = validator_of(name)
            for command in commands:
                result = subprocess.run(f"{binary} {command.replace('{layout}', layout)}", shell=True, capture_output=True,
                                        check=False, encoding="utf-8")
                wrong = faults(validator, json.loads(result.stdout))
                failed += bool(wrong)
                passed += not wrong
                for line in wrong[:5]:
                    print(f"{name}: oilway {command}: {line}")
        for name, asked, value in answers(binary, layout):
            wrong = faults(validator_of(name), value)
            failed += bool(wrong)
            passed += not wrong
            for line in wrong[:5]:
                print(f"{name}: {asked}: {line}")
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed or not passed else 0)


if __name__ == "__main__":
    main()
