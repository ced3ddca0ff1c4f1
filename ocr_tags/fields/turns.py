"""How what another field says begins, where no full stop or label parts it."""

from __future__ import annotations

from ocr_tags.patterns import later

OTHER_MATTER = later(
    r"(?:(?:[\w-]+ ){0,2}(?:annual|perennial|biennial|shrub|tree|vine|climber|herb|bulb)s?(?=[\t\n]|$)"
    r"|(?:divide|cut|prune|dead-?head|pinch|mulch|stake|plant|space|sow|harvest|pick|feed|fertili[sz]e)"
    r" (?:back|every|in|after|to|when|hard|at|out|weekly|monthly)\b|hardy|frost[- ](?:tender|hardy|free)"
    r"|winterhart|winterhard|full sun|part(?:ial)? (?:sun|shade)|zones? ?\d|ht\b"
    r"|(?:no|never mind) (?:food|feed|fertili[sz]er)\b|spacing|space \d"
    r"|\d+ ?-? ?\d* ?(?:cm|in|ft|m|\"|”|″|')(?!\w)"
    r"|(?:heavy|light|rich|poor|fertile|sandy|loamy|clay|acid|neutral|alkaline|limy|gritty|stony|average"
    r"|well[- ]drained|free[- ]draining|moist(?=, well)|humus-rich)(?:, | (?:to|or) )(?:well|free|sharply"
    r"|rich|moist|fertile"
    r"|poor|acid|neutral|alkaline|limy|sandy|loamy|gritty|clay|heavy|light|chalky|stony)\b)"
)
"""In small letters such words begin what another field says."""

NEW_MATTER = later(
    r"(?<=[a-zà-ÿ0-9%)]) (?=(?:Loved by|Attracts?|Resists?|Resistant|Fragrant|Scented|Evergreen|Deciduous"
    r"|Deer|Rabbit|Drought|Salt|Grown (?:by|in)|Good (?:for|cut)|Great for|Ideal for|Perfect for|Native to"
    r"|Hardy (?:to|in)|Harmful|Toxic|Poisonous|All parts|Fertili[sz]er|Where to|Acclimati?[sz]e"
    r"|Divide|Firm in|Keep this|Please|Guaranteed|Self-(?:fertile|pollinating|sterile|seeds))\b)"
)
"""Within a line, with its full stop lost, a capital that begins what another field says."""
