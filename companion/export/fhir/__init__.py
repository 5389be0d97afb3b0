"""The answers as HL7 FHIR R5 resources."""
