"""Faults put into a good plan on purpose: each must be noticed by the rule it breaks. Also proves that no rule sleeps."""

import rules
import spoils_coats  # noqa: F401  each module adds its faults
import spoils_measures
import spoils_people  # noqa: F401
import spoils_strips  # noqa: F401
from good_plan import good_plan
from simulator import faults_of
from spoiling import SPOILS


def prove():
    """Spoils the good plan in every way; gives how many faults were put in, and what went unnoticed."""
    unnoticed = [f"the good plan: {sentence} [{rule}]" for rule, sentence in faults_of(good_plan())]
    for rule, change in SPOILS:
        plan = good_plan()
        change(plan)
        if rule not in {name for name, _ in faults_of(plan)}:
            unnoticed.append(f"{change.__name__.replace('_', ' ')}: {rule} does not notice")
    proven = {rule for rule, _ in SPOILS}
    unnoticed += [f"no fault is put in for {check.__name__}" for check in rules.RULES if check.__name__ not in proven]
    count, more = spoils_measures.prove()
    return len(SPOILS) + count, unnoticed + more
