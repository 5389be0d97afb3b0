"""The FHIR export: a person's answers as HL7 FHIR R5 resources."""
