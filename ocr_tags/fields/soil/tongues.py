"""Kinds of soil in other languages (common practice, no source)."""

from __future__ import annotations

from ocr_tags.patterns import later

_FRENCH = (
    r"(?:(?:bien |peu |tres |assez |plutot |non )?(?:draine\w*|frais|fraiche|humides?|secs?|seche|riches?"
    r"|pauvres?|calcaires?"
    r"|acides?|neutres?|legers?|legere|lourds?|lourde|argileu\w+|sableu\w+|sablonneu\w+|humiferes?"
    r"|profonde?s?|fertiles?|ordinaires?|meubles?|caillouteux|rocailleux|alcalins?|limoneux|de bruyere))"
)
_SPANISH = (
    r"(?:(?:bien |muy )?(?:drenad[oa]s?|humed[oa]s?|sec[oa]s?|ric[oa]s?|fertil(?:es)?|arenos[oa]s?"
    r"|arcillos[oa]s?|acid[oa]s?"
    r"|alcalin[oa]s?|suelt[oa]s?|pobres?|pedregos[oa]s?|caliz[oa]s?|neutr[oa]s?|liger[oa]s?))"
)
GERMAN = (
    r"(?:(?:gut |leicht |massig )?(?:durchlassig|humos|humusreich|nahrstoffreich|sandig|lehmig|feucht|frisch"
    r"|trocken|sauer|saur|kalkhaltig|locker|normal|mager|steinig|tiefgrundig|mull?rik|naringsrik|fuktig|torr"
    r"|valdranerad)\w{0,2})"
)
_DUTCH = (
    r"(?:(?:goed |licht )?(?:(?:water)?doorlatende?|vochtige?|humusrijke?|voedzame|zure|droge|natte"
    r"|vruchtbare|losse|normale))"
)
_DANISH = (
    r"(?:(?:god |let |meget )?(?:veldrænet|veldraenet|gennemtrængelig|kalkrig|kalkholdig|næringsrig|muldrig"
    r"|humusrig|fugtig|frisk|tør|sandet|leret|sur|let|mager|almindelig)\w?)"
)
ELSEWHERE = later(
    rf"\b(?:(?:sols?|terres?|terrains?) {_FRENCH}(?:(?:,? (?:et|ou|a|mais) |, ?|/| ){_FRENCH})*"
    r"|tous (?:(?:les )?types de )?sols?\b|tout (?:type de )?sol\b|terre de bruyere"
    rf"|suelos? {_SPANISH}(?:(?:,? (?:y|o|a|pero) |, ?|/| ){_SPANISH})*"
    rf"|{GERMAN}(?:(?:,? (?:und|bis|oder|och) |, ?|/| ){GERMAN})* (?:garten)?(?:boden|erde|jord)"
    rf"|{_DANISH}(?:(?:,? (?:og|til|eller) |, ?|/| ){_DANISH})* (?:have)?jord"
    rf"|{_DUTCH}(?:(?:,? (?:en|of|tot) |, ?|/| ){_DUTCH})* (?:tuin)?(?:grond|bodem))\b"
)
