"""What filled containers weigh: shapes, materials, readings and their uncertainty."""
