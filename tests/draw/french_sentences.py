"""Sentences of French cards: the game, the heading, the line."""

from __future__ import annotations

HERONS = "heron-and-pike"
HAPPENS, NEEDS, SET_UP, PLAYS = "Ce qui se passe", "Il vous faut", "Mise en place", "Comment jouer"
SENTENCES = (
    (
        HERONS,
        HAPPENS,
        "Quand un joueur d’une équipe renverse une pierre de l’autre équipe, la pierre reste à terre.",
    ),
    (
        HERONS,
        HAPPENS,
        "Quand un ballon d’un joueur d’une équipe finit dans les mains de l’autre équipe, le premier dans la file des "
        "hérons de l’autre équipe revient en jeu.",
    ),
    (HERONS, NEEDS, "6 pierres (3 par équipe, comme une quille en plastique)"),
    (HERONS, SET_UP, "Mettre l’anneau de chaque équipe derrière sa ligne de fond."),
    (HERONS, NEEDS, "Chasubles ou rubans pour distinguer les hérons et les brochets"),
    (
        HERONS,
        "Attention",
        "Ballons en mousse\u00a0: vérifier l’enveloppe\u00a0; un ballon en mousse déchiré s’effrite et vole mal.",
    ),
    ("sledge-road", SET_UP, "Garde\u00a0: jusqu’à 16 porteurs."),
    ("sledge-road", NEEDS, "1 rondin (pour chaque porteur, comme un plot)"),
    (
        "toll-stone",
        HAPPENS,
        "Quand un joueur d’une équipe renverse une pierre, la pierre avance de 1 pas vers son camp.",
    ),
    ("toll-stone", SET_UP, "Piste du péage\u00a0: 6 pas du camp de l’Ouest au camp de l’Est."),
    ("toll-stone", PLAYS, "On garde une balle de tennis en mousse au plus 15 secondes."),
    ("four-becks", PLAYS, "Les joueurs de chaque équipe restent dans leur partie."),
    (
        "cairn-keepers",
        PLAYS,
        "1 joueur de chaque équipe au plus garde chaque jalon de son équipe ou chaque cairn de son équipe.",
    ),
    (
        "millrace-roll",
        HAPPENS,
        "Quand un joueur d’une équipe renverse un plot de l’autre équipe, son équipe marque 2 points et le plot est "
        "remis debout.",
    ),
    (
        "homestead",
        HAPPENS,
        "Quand un colon renverse une cheminée, un colon attend dans la file d’attente, le premier dans la file "
        "d’attente revient en jeu et la cheminée reste à terre.",
    ),
    (
        "ferry-bench",
        "Comment gagner",
        "Une équipe gagne quand elle a au moins 5 joueurs sur le banc d’en face de n’importe quelle équipe.",
    ),
)
# A line of the sheet, a line in its place, and its sentence: a side that was named is "il", "elles".
NAMED = (
    (
        "ferry-bench",
        "a side wins when it has 5 players on the far bench",
        "owls wins when it has 5 players on the far bench",
        "Les chouettes gagnent quand elles ont au moins 5 joueurs sur le banc d’en face de n’importe quelle équipe.",
    ),
    (
        "lantern-row",
        "a side wins when the other side has no lanterns standing",
        "south wins when it has at least 3 lanterns standing",
        "Le Sud gagne quand il a au moins 3 lanternes debout.",
    ),
)
