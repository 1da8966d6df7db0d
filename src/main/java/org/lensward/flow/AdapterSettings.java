package org.lensward.flow;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.validation.annotation.Validated;

/**
 * The adapter's settings, under {@code lensward.*}.
 *
 * @param record the hospital's FHIR server
 * @param watch how changes are found
 * @param policy the hospital's policy file; the shipped one if absent
 * @param siteCodes the hospital's map of its own codes; none if absent
 * @param dryRun whether the adapter starts without writing anything to the record
 * @param zone the hospital's time zone, by which "today" is told
 */
@Validated
@ConfigurationProperties("lensward")
public record AdapterSettings(
        @Valid @NotNull RecordServer record,
        @Valid @DefaultValue Watch watch,
        @Nullable Path policy,
        @Nullable Path siteCodes,
        boolean dryRun,
        @NotBlank @DefaultValue("UTC") String zone) {

    /**
     * The record.
     *
     * @param url base address of its FHIR R4 endpoint
     * @param timeout the longest wait for an answer
     */
    public record RecordServer(
            @NotNull URI url, @DefaultValue("30s") Duration timeout) {}

    /**
     * Polling.
     *
     * @param interval pause between two polls
     * @param overlap how far each poll looks back before the last one, for clocks that differ and transactions that surface late
     * @param pageSize resources per page
     */
    public record Watch(
            @DefaultValue("5s") Duration interval,
            @DefaultValue("150s") Duration overlap,
            @Min(10) @DefaultValue("500") int pageSize) {}
}
