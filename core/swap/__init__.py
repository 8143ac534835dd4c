"""Swapping a movement, and the gaps of a house."""
