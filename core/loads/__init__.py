"""Every load a house can make for a use, the recipe for each, and the steps between."""
