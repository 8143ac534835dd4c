"""Tests and what they tell: protocols, results, published norms, change on retest, trends, and equations for effort."""
