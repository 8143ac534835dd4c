"""The week, the eight weeks and the session clock."""
