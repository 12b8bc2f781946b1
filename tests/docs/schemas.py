#!/usr/bin/python3
"""Validates what the program prints as JSON against docs/schema: tests/docs/schemas.py BINARY"""
import json
import os
import subprocess
import sys
import tempfile

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
}


def main():
    binary = os.path.abspath(sys.argv[1])
    passed = failed = 0
    with tempfile.TemporaryDirectory() as folder:
        layout = os.path.join(folder, "layout.yaml")
        subprocess.run(f"{binary} {STACK.replace('--json ', '')} --to snipe-22:oil-in --keep sw-2 --format yaml --output {layout}",
                       shell=True, check=True)
        for name, commands in COMMANDS.items():
            with open(f"docs/schema/{name}.json", encoding="utf-8") as source:
                schema = json.load(source)
            jsonschema.Draft202012Validator.check_schema(schema)
            validator = jsonschema.Draft202012Validator(schema)
            for command in commands:
                result = subprocess.run(f"{binary} {command.replace('{layout}', layout)}", shell=True, capture_output=True,
                                        check=False, encoding="utf-8")
                wrong = [f"{list(fault.absolute_path)}: {fault.message[:200]}"
                         for fault in validator.iter_errors(json.loads(result.stdout))]
                failed += bool(wrong)
                passed += not wrong
                for line in wrong[:5]:
                    print(f"{name}: oilway {command}: {line}")
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed or not passed else 0)


if __name__ == "__main__":
    main()
