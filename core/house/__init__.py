"""The household: people, places and the things they own."""
