"""What is known of the names of plants and of firms, and how a name is told from other print."""
