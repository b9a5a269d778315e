"""Does the calendar file of a pack hold the plan's days, from setting up to home?"""

import datetime
import re


def visits_in(text):
    """(First minute, last minute) in UTC of every crew day of a job.ics."""
    unfolded = re.sub(r"\r?\n ", "", text)
    found = []
    for event in re.findall(r"BEGIN:VEVENT(.*?)END:VEVENT", unfolded, re.S):
        if re.search(r"^UID:.*-crew-", event, re.M) and "STATUS:CANCELLED" not in event:
            found.append(tuple(minute(re.search(rf"^{key}:(\d{{8}}T\d{{6}}Z)", event, re.M)) for key in ("DTSTART", "DTEND")))
    return sorted(found)


def minute(match):
    """Minutes since 1970 of a time in UTC; None where it is written otherwise."""
    if match is None:
        return None
    at = datetime.datetime.strptime(match.group(1), "%Y%m%dT%H%M%SZ").replace(tzinfo=datetime.timezone.utc)
    return int(at.timestamp()) // 60


def faults(text, plan):
    """Where calendar file and plan differ, as (rule, sentence)."""
    told = visits_in(text)
    wanted = sorted((d.arrive, d.home) for d in plan.site_days())
    if told != wanted:
        odd = ", ".join(str(d) for d in plan.site_days() if (d.arrive, d.home) not in told) or "none"
        yield "calendar_file", f"job.ics holds {len(told)} crew days, the plan {len(wanted)}; other hours on {odd}"
