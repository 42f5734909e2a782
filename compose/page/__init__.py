"""The teacher's page: the whole job in a browser on the own machine, a file a screen."""
