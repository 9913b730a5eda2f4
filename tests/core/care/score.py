"""Print how the cases of care stand: python tests/core/care/score.py [area] [--wrong] [--names].

`--names` prints the names of what is not wholly right, for not_yet_right.txt.
"""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from care_cases import judge, load_cases, table_of


def main(words: list[str]) -> None:
    areas = [word for word in words if not word.startswith("--")]
    cases = [case for case in load_cases() if not areas or case["area"] in areas]
    outcomes = [(case, judge(case)) for case in cases]
    if "--names" in words:
        wrong = (case for case, outcome in outcomes if not outcome.right)
        print("\n".join(f"{case['area']}: {case['name']}" for case in wrong))
        return
    if "--wrong" in words:
        for case, outcome in outcomes:
            if not outcome.right:
                print(f"{case['area']}: {case['name']}")
                for word in ("missed", "false", "unknown"):
                    if found := getattr(outcome, word):
                        print(f"    {word}: {', '.join(sorted(found))}")
                if outcome.unread:
                    print(f"    unread: {outcome.unread}")
    print(table_of(outcomes))
    innocent = [outcome for case, outcome in outcomes if case["innocent"]]
    print(f"innocent and right: {sum(one.right for one in innocent)} of {len(innocent)}")


if __name__ == "__main__":
    main(sys.argv[1:])
