"""How teachers say that somebody takes things and brings them: one at a time, stolen, put back, brought home."""

from __future__ import annotations

from grammar.heard.saying import WHAT, Saying, saying

_TAKE = r"(?:takes?|steals?|grabs?|snatch(?:es)?|fetch(?:es)?|gets?|collects?|picks? up|carry|carries)"
_BRING = r"(?:bring|carry|take|run|put|lay|drop|get)s?"
_THING = rf"(?:an? |the |1 )({WHAT})"
_BACK = r"(?: (?:to|in) (?:its|their) place| where (?:it|they) (?:was|were|came from|lay))?"

BRINGING: tuple[Saying, ...] = (
    saying(rf"\b(?:(?:only|just) )?(?:1|a single|an?) (?:single )?({WHAT})(?:,? (?:only )?1)? at a time(?= )", r"a \1",
           "play"),
    saying(rf"\b({_TAKE}) ({WHAT}),? (?:(?:only )?1 (?:by 1|after (?:the other|another)|at a time)|singly)(?= )",
           r"\1 a \2", "play"),
    saying(rf"\b(?:run|go|cross) (?:into the other half|over|across)(?: (?:the )?(?:court|hall|middle line|to the "
           rf"other side))? and (?={_TAKE}\b)", "", "play"),
    saying(rf"\b(?:run|go)(?:es|s)? (?:in)?to (the (?:{WHAT} )?{WHAT}),? (?:and )?{_TAKE} {_THING},? (?:and )?{_BRING} "
           r"(?:it|this) (?:back |home )?(?:in|into|to|on|onto) ", r"take a \2 from \1 to ", "play"),
    saying(rf"\b{_TAKE} {_THING} ((?:from|out of) .+?),? (?:and )?{_BRING} (?:it|them|this) (?:back |home )?"
           r"(?:in|into|to|on|onto) ", r"take a \1 \2 to ", "play"),
    saying(rf"\b(?:steal|grab|snatch|get|collect|pick up|fetch|bring|carry) {_THING}((?: or an? {WHAT})*) (?:out )?"
           r"(?:from|of|out of) (?=.+ to (?:the|their) )", r"take a \1\2 from ", "play"),
    saying(r"^(?:nobody|no one|no player) (?:may )?(?:hold|have|carrie|take|keep)s? (?:more than 1|2) balls?(?: at "
           r"once| at a time)?$", '"Nobody holds more than one ball."', "play"),  # as it is anyway
    saying(r"\bpick up (balls|loose balls) (?:that lie |which lie )?in (?=their half)", r"fetch balls from ", "play"),
    saying(r"^(?:(?:each|every|a|any) player|players|everyone) (?:may |can |must )?(?:only )?(?:carry|take|hold|bring|"
           r"carries|takes|holds|brings) "
           rf"(?:only |just |at most )?(?:1|an?) ({WHAT})(?: at a time| at once)?$",
           r'"Each player carries 1 \1 at a time."', "play"),  # which holds anyway
    saying(rf"(?<=: )that player (?:puts|brings|takes|carries|gives|returns|hands) (?:the|their|its) ({WHAT})(?: "
           rf"back)?{_BACK} and (?:that player )?", r"the \1 goes back and that player ", "when"),
    saying(rf"(?<=: )that player (?:puts|brings|takes|carries|gives|hands) (?:the|their|its) ({WHAT}) back{_BACK}$",
           r"the \1 goes back", "when"),
    saying(rf"(?<=: )(?:the|their|its) ({WHAT}) (?:is (?:put|brought|taken|laid|carried) back|goes back){_BACK}"
           r"(?=$| and )", r"the \1 goes back", "when"),
    saying(rf"^(an? {WHAT}) (?:is brought|comes|gets|is carried) home(?=:)", r"\1 arrives", "when"),
    saying(rf"^(an? {WHAT}) is (?:brought|carried|taken) (?:back )?(?:to|into|in) (?=the |their |its )",
           r"\1 arrives at ", "when"),
    saying(rf"^(an? (?!ball\b|pass\b){WHAT}) (?:gets|comes|makes it|is)(?: safely)? (?:across|over|through|home|past)"
           r"(?=:)", r"\1 arrives", "when"),
    saying(rf"^(an? ({WHAT}) arrives[^:]*): that (?:player|\2) (?=scores)", r"\1: it ", "when"),
)  # fmt: skip
