"""Understanding what people type: phrases, units, places, days, pain and other signs. Knows no flow and no lifter."""
