"""A recipe at another size: targets, scaled lines, what is finished, ovens, what stays."""
