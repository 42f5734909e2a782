"""What may happen, as a line of the when-section names it → triggers: one for each who acts and is concerned."""
