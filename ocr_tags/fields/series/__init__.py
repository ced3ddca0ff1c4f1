"""The series a cultivar belongs to: `reader` reads, `beside` where it stands without a label."""
