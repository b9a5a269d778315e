"""The list of rules a plan must keep. A rule is a function from a plan to what is wrong, each in a sentence."""

RULES = []


def rule(check):
    """Puts a function among the rules; its name is the rule's name, its first line of text says what it asks."""
    RULES.append(check)
    return check


def faults(plan, names=None):
    """All faults of a plan, as (rule, sentence)."""
    found = []
    for check in RULES:
        if names is None or check.__name__ in names:
            found += [(check.__name__, sentence) for sentence in check(plan)]
    return found
