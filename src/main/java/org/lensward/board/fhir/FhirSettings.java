package org.lensward.board.fhir;

import jakarta.validation.constraints.NotNull;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;
import org.springframework.validation.annotation.Validated;

/**
 * Our own FHIR endpoint, under {@code lensward.fhir.*}.
 *
 * @param bodyLimit the longest request
 */
@Validated
@ConfigurationProperties("lensward.fhir")
public record FhirSettings(@NotNull @DefaultValue("5MB") DataSize bodyLimit) {}
