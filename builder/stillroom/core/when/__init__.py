"""Spans of time, stages, dates, the season, giving days, the year and its calendar."""
