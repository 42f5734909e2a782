"""The sentences of the language, one frozen class for each rule of rules.lark, by section."""
