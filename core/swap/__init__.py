"""Swapping a movement for the nearest one that can be done, and the gaps of a house."""
