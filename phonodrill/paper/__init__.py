"""What stands on paper: pages described without saying how they are drawn."""
