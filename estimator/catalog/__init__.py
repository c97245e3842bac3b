"""The books that the user edits: materials, labor, shop settings and accounts."""
