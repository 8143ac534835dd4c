"""Every load a house can make for a use, and the steps between."""
