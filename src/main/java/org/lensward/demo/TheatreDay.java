package org.lensward.demo;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;

/** The demo's theatre day: one Bundle for each booking, as it lies in {@code demo-data}. */
public final class TheatreDay {

    /** When all of it is to happen. */
    public static final String DAY = "2026-12-10";

    private final FhirContext fhir;

    public TheatreDay(FhirContext fhir) {
        this.fhir = fhir;
    }

    /** Every booking's Bundle, in the order of their folders' names. */
    public List<Bundle> bundles() {
        try {
            Resource[] files = new PathMatchingResourcePatternResolver().getResources("classpath:demo-data/*/in.json");
            return Arrays.stream(files)
                    .sorted(Comparator.comparing(Resource::getDescription))
                    .map(this::read)
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** The cartons in the building. */
    private Bundle bank() {
        return read(new ClassPathResource("demo-data/lens-bank.json"));
    }

    private Bundle read(Resource file) {
        try (InputStream in = file.getInputStream()) {
            return fhir.newJsonParser()
                    .parseResource(Bundle.class, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Fills a record with the day. */
    public void load(String baseUrl) {
        fhir.getRestfulClientFactory().setServerValidationMode(ServerValidationModeEnum.NEVER);
        fhir.getRestfulClientFactory().setSocketTimeout(120_000);
        IGenericClient client = fhir.newRestfulGenericClient(baseUrl);
        bundles().forEach(bundle -> client.transaction().withBundle(bundle).execute());
        client.transaction().withBundle(bank()).execute();
    }
}
