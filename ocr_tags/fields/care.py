"""What readers of water, soil and feeding share: phrases behind labels, and sentences by how they begin.

A labelled phrase counts before a sentence; of several sentences the first. The printed words are kept,
with single spaces. Reading "Low" or "weekly" as an amount is nobody's business here: needs change with
soil, weather and age of the plant.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import chain

from ocr_tags.fields.labels import is_label
from ocr_tags.fields.parts import IT_WILL
from ocr_tags.fields.phrases import Phrases, clean, flowing, fold
from ocr_tags.fields.values import Labelled, is_torn, labelled, value_end
from ocr_tags.patterns import later
from ocr_tags.record import Found

AMOUNT = (
    r"(?:very |evenly |moderately |fairly )?(?:low|medium|med|moderate|average|high|regular|normal|minimal"
    r"|light"
    r"|heavy|dry|moist|wet|weekly|daily|modere|moyen|moderado|medio|bajo|alto|massig|mittel|matig|regelmatig)"
)
DOUBTFUL = 0.5
WHISPER = 0.15
"""Certainty of a phrase across a gap with none of its field's words: another part of the tag, as a rule."""


def after_labels(
    text: str,
    labels: Phrases[bool],
    bare: re.Pattern[str],
    own: re.Pattern[str],
    sentence: re.Pattern[str],
) -> Iterator[Found[str]]:
    """Labelled phrases. With only a space between, the rest must be a value that could not end a sentence.

    A phrase with none of the field's `own` words is doubtful, and behind a column gap or line end another
    part of the tag. A capital after the label ("Soil type Rich loam") is no sentence of its label either.
    Where label and value together make a `sentence` ("Feed weekly"), there is no label.
    """
    for found in labelled(text, labels):
        found = _with_next(text, found, own, sentence)
        phrase = clean(text[found.start : found.end])
        if (
            not any(character.isalpha() for character in phrase)
            or len(phrase) > 160
            or labels.whole(phrase)
            or is_label(phrase)
            or _SIZE.fullmatch(phrase)
        ):
            continue
        if found.bare and text[found.start - 1] == " " and sentence.match(flowing(text), found.label):
            continue
        spoken = own.search(fold(phrase)) is not None or sentence.match(fold(phrase)) is not None
        label = text[found.label : found.start].rstrip()
        apart = label[1:].islower() or (label.isupper() and not phrase.isupper())
        titled = spoken and apart and (phrase[0].isupper() or (label.isupper() and len(label) > 3))
        if found.bare and not titled and not bare.fullmatch(fold(phrase)):
            continue
        doubt = 1.0 if spoken else WHISPER if set(text[found.label : found.start]) & set("\t\n") else 0.8
        if found.second:
            doubt *= 0.5  # its words are not those that are kept
        rest = text[found.end : found.end + 2]
        parted = rest[:1] == "\t" and rest[1:].islower() and phrase[0].isupper()
        if parted or _BROKEN.match(phrase) or is_torn(text[found.start : found.end]):
            doubt = min(doubt, 0.4)
        yield Found(phrase, (found.start, found.end), found.certainty * doubt)


def _with_next(text: str, found: Labelled, own: re.Pattern[str], sentence: re.Pattern[str]) -> Labelled:
    """A labelled phrase with what the same line says of it next: "Sparingly. Allow to dry".

    Behind a label of two things ("Light & water. Part shade. A weekly soak.") only the next may tell of this.
    """
    gap = later(r"[.;!] ").match(text, found.end)
    if not gap or not sentence.match(flowing(text), gap.end()):
        return found
    phrase = fold(text[found.start : found.end])
    first = found.start if own.search(phrase) or sentence.match(phrase) else gap.end()
    return replace(found, start=first, end=value_end(text, gap.end()))


_SIZE = later(
    r"\W*\d[^a-z]{0,12}(?:in|ft|cm|m|inches|feet)?\b[^a-z]{0,4}(?:high|tall|wide|across|apart)\W*", re.I
)
"""A size that stands where the value of another label was lost."""
_BROKEN = later(
    r"(?![aAàyoI] )[^\W\d_] (?=[a-z])|[a-z](?=[A-Z][a-z]{2})|[“”\"‘’'] ?[a-z]"
    r"|\W*[^\W\d_]{1,4}\.+(?=[A-Z])|(?:[Aa]n?|[Tt]he) (?:spring|summer|autumn|fall|winter|week|month|year)$"
    r"|(?:years?|weeks?|months?)$"
    r"|(?:drained"
    r"|draining|drainage|and|or|of"
    r"|than)\b"
)
"""The end of a torn word or phrase, or leader dots read as letters: "e moist", "drained", "ww.Sandy"."""
_JOBS = (
    r"(?:cut|prune|dead-?head|pinch|trim|shear|stake|mulch|plant|space|harvest|divide|remove|protect|pick"
    r"|lift"
    r"|fertili[sz]e|feed|water)"
)
_TO_ITS_CARE = (
    r"(?:fertili[sz]e|feed|water|mulch|dead-?head|cut (?:it |them )?(?:back|down)|prune|pinch|trim|shear"
    r"|stake|thin"
    r"|bring (?:it|them|(?:the )?(?:pots?|plants?|tubers?|containers?)) (?:in(?:doors|side)?|under cover)"
    r"|harvest|divide|repot|spray|weed|support|tie|keep|pick (?:often|regularly|daily|young|over)"
    r"|(?:shelter|protect|shade|shield|guard)(?= (?:it |them |young |the \w+ )?(?:from|against|in|with))"
    r"|(?:away|out|sheltered|protected) (?:from|of) (?:the |full |hot |strong |cold |direct )*(?:draughts?"
    r"|drafts?|winds?"
    r"|sun|frosts?|heat|reach|rain))"
)
_OTHER_JOB = later(
    rf"[,;]\s(?:and |then |so )?(?=(?:{_JOBS}"
    r"|(?:(?:balanced|liquid|weekly|monthly|fortnightly|high[- ]potash|tomato|rose|half-strength|dilute|weak"
    r"|bloom|plant|fish|citrus|orchid|cactus|lawn|general|slow-release"
    r"|regular) ){1,3}(?:feed|food|fertili[sz]er)|frost[- ](?:tender|hardy)|hardy|half-hardy|spacing|height"
    r"|spread|flowers?|flowering|blooms?|zones?"
    r"|deer|attracts?|loved)\b)"
    rf"|,? (?:and|&) (?:then |also |please )?(?={_TO_ITS_CARE}\b(?! again))"
    rf"|,? (?:and|so) (?:then )?(?={IT_WILL})|,? or (?=(?:else |the |its )?[a-z]+(?:['’]ll| will| may)\b)"
    r"|(?:,|,? (?:and|&|or)) (?=(?:an? )?(?:(?:full|part(?:ial)?|bright|light|some|morning|afternoon) "
    r"(?:sun|shade|light)|sun|shade|(?:rich|fertile|well[- ]drain(?:ed|ing)|good|average|sandy"
    r"|free[- ]draining|loamy|acidic?|moist)(?:[, ]+[\w-]+)? soil)\b)"
)
"""Where a sentence turns to another job, another need or what comes of it: "Keep moist, cut back in fall"."""
_SAME_CLAUSE = later(r"(?i)\w,? \w+,? (?:and|then|with|but|&)\s$")
"""A phrase may also begin behind such words: "Firm in and feed weekly"."""


_ITS_PLANT = r"(?:it|them|me|her|him|this(?: (?:one|plant))?|the plants?)"


def asking(verb: str) -> re.Pattern[str]:
    """Where a question asks how the plant is to be treated: "Do I water it?", "And feed it?"."""
    asks = (
        r"(?:(?:when|how|how (?:often|much|frequently)|what)(?: do| should| must)? |do |should |must "
        r"|shall |can )"
        r"(?:i|we|you) "
    )
    what = r"(?:anything|something|what|how much|how often) (?:else )?to "
    return later(
        rf"(?:^|(?<=[\n\t])|(?<=[.!?] ))(?:and |so |but )?(?:{asks}|{what})?{verb} {_ITS_PLANT}"
        r"(?: with)?\?\s?",
        re.I,
    )


def asked(text: str, questions: re.Pattern[str]) -> Iterator[Found[str]]:
    """What answers such a question, to the end of its sentence."""
    for match in questions.finditer(text):
        end = value_end(text, match.end())
        phrase = clean(text[match.end() : end])
        if 1 < len(phrase) <= 160 and phrase[0].isalnum() and text[end : end + 1] != "?":
            yield Found(phrase, (match.end(), end), 0.9)


def opens_sentence(text: str, at: int) -> bool:
    """Whether nothing of the same sentence stands before."""
    before = text[:at]
    return not before.strip() or bool(
        re.search(r"(?:[.!;:•|·\t\n,]|[^\w\s])\s*$", before)
        or _POT.search(before)
        or (text[at : at + 1].islower() and _CAPITAL_HEAD.search(before))
    )


_CAPITAL_HEAD = later(r"(?:^|[\n\t])[A-Z]{3,}(?: [A-Z]{2,}){0,2} \Z")
"""A heading in capitals that leads on: "AFTER CARE water weekly"."""
_POT = later(r"\d ?(?:l|lt|ltr|lit(?:re|er)|gal\.?|gallon|cm|in\.?) (?:pot|container|tub)s? (?=\Z)", re.I)
"""The size of the pot, behind which a list without stops goes on: "7L container Water weekly"."""


def sentences(text: str, opening: re.Pattern[str], certainty: float) -> Iterator[Found[str]]:
    """Sentences that begin as `opening` says, to their end or to another job.

    What is wanted may begin behind a word that joins it to the sentence: its group is then called "advice".
    """
    folded = flowing(text)
    for match in opening.finditer(folded):
        end = value_end(text, match.start(), match.end())
        jobs = _OTHER_JOB.finditer(folded, match.end(), end)
        end = next((job.start() for job in jobs if not opening.match(folded, job.end())), end)
        joined = "advice" in match.re.groupindex and match.start("advice") > match.start()
        start = match.start("advice") if joined else listed_from(text, match.start())
        phrase = clean(text[start:end])
        opens = opens_sentence(text, match.start() if joined else start)
        opens = opens or bool(_SAME_CLAUSE.search(text[: match.start()]))
        if opens and 6 <= len(phrase) <= 160:
            torn = is_torn(text[match.start() : end]) and not _BETWEEN.match(text, end - 7)
            doubt = 0.4 if torn else 1.0
            yield Found(phrase, (start, end), certainty * doubt)


_BETWEEN = later(r"between[.!]")
"""With its full stop no torn end: "let it dry between."."""
_LISTED = later(r"(?:^|(?<=[\n\t])|(?<=[.!•*·|] ))[A-Z][a-z]+; \Z")


def listed_from(text: str, at: int) -> int:
    """Where a phrase begins: one word before a semicolon belongs to it, as in "Adaptable; tolerates clay"."""
    first = _LISTED.search(text, 0, at)
    return first.start() if first else at


def or_spoken(text: str, found: list[Found[str]], spoken: Iterator[Found[str]]) -> Iterator[Found[str]]:
    """What was found after labels; a sentence too, where that leaves doubt. Each in one language, and none
    that asks ("And feed it?")."""
    found = [one for one in found if not _asks(text, one)]
    sure = any(one.certainty > DOUBTFUL for one in found)
    shown = chain(found, () if sure else _first_sure(one for one in spoken if not _asks(text, one)))
    yield from (replace(one, value=in_english(_QUESTION.sub("", one.value))) for one in shown)


_QUESTION = later(
    r"\A(?:(?-i:(?:Moisture|Water(?:ing)?|Drinks?|Soil|Ground|Feed(?:ing)?|Eats|Care)(?=[A-Z][a-z]{2}))"
    r"|(?:(?:and|so|but|ok|okay),? )?(?:anything|something|what|how|when|where|do|does|should|shall|must|can"
    r"|is|are|any|need|why)\b[^?.]*\?\s+(?=\w))",
    re.I,
)
"""What an answer answers, where it opens the sentence, and a label whose gap was not read."""


def _asks(text: str, found: Found[str]) -> bool:
    return found.value.endswith("?") or text[found.span[1] : found.span[1] + 1] == "?"


def _first_sure(spoken: Iterator[Found[str]]) -> Iterator[Found[str]]:
    """The first sentence that leaves no doubt, or else the first of all."""
    first = next(spoken, None)
    if first:
        others = chain([first], spoken)
        yield next((one for one in others if one.certainty > DOUBTFUL), first)


_OTHER_TONGUE = later(
    r"[à-öø-ÿß]|\b(?:est|ouest|nord|sud|le|la|les|du|des|de|une?|et|au|aux|en|si|sol|terre|humide|sec"
    r"|seche|frais|arros\w+"
    r"|eau|garder|regulier\w*|moyen\w*|faible|eleve\w*|moder[eé]\w*|legere?\w*|drain[eé]e?s?|riche|pauvre"
    r"|acide|neutre|argil\w+|sabl\w+|chaque|semaines?|mois|mensuel\w*|printemps"
    r"|engrais|fertiliser au|tous?|toute?s?|abondant\w*"
    r"|moderado|bajo|alto|medio|suelo|dejar|secar|regar|riegue|riegos|laisser|secher|riego|humedo|seco"
    r"|cada|agua|fertilizar"
    r"|und|oder|der|die|das|bei|nass|feucht|trocken|boden|mullrik|fuktig|torr|wenig|viel|mittel|nicht"
    r"|het|een|van|niet|droog|vochtig|weinig|veel|grond)\b",
    re.I,
)


def other_tongue(phrase: str) -> bool:
    """Whether a phrase has letters or words that English has not."""
    return _OTHER_TONGUE.search(phrase) is not None


def in_english(phrase: str) -> str:
    """Of a phrase that is printed in two languages, a stroke or but a capital between, its English half.

    >>> in_english("Keep moist / Garder humide"), in_english("Sun / part shade"), in_english("Sec / Dry")
    ('Keep moist', 'Sun / part shade', 'Dry')
    >>> in_english("Régulier, surtout au printemps Regular, in spring above all")
    'Regular, in spring above all'
    """
    halves = re.split(r"\s+/\s*|\s*/\s+", phrase)
    if len(halves) == 1:
        halves = re.split(r"(?<=[a-zà-ÿ]) (?=[A-Z])", phrase)
        halves = halves if all(half[0].isupper() for half in halves) else []  # "1x pro Woche"
    if len(halves) != 2:
        return phrase
    english = [half for half in halves if not _OTHER_TONGUE.search(half)]
    return english[0] if len(english) == 1 else phrase
