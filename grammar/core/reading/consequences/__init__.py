"""What an event leads to → effects and rules: things fall, players move, points are given."""
