package org.lensward.flow;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Map;
import org.lensward.record.incoming.Site;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.validation.annotation.Validated;

/**
 * HL7 v2, under {@code lensward.hl7.*}.
 *
 * @param port where messages are taken; 0 takes none
 * @param host the address it listens at
 * @param systems identifier system of each assigning authority, by its namespace or universal id
 * @param operations SNOMED CT procedure of each local operation code
 * @param charset character set of messages whose MSH-18 is empty
 * @param processing the processing id (MSH-11) that is meant
 * @param longest most bytes of one message
 * @param lensOrderTo host and port to which lens orders are sent; empty sends none
 * @param lensOrderEvery how often the record is asked for orders to send
 * @param lensOrdersSent the file that remembers what was sent
 */
@Validated
@ConfigurationProperties("lensward.hl7")
public record Hl7Settings(
        @Min(0) @Max(65_535) @DefaultValue("0") int port,
        @NotBlank @DefaultValue("127.0.0.1") String host,
        @DefaultValue Map<String, String> systems,
        @DefaultValue Map<String, String> operations,
        @DefaultValue("UTF-8") Charset charset,
        @NotBlank @DefaultValue("P") String processing,
        @Min(1024) @DefaultValue("1048576") int longest,
        @DefaultValue("") String lensOrderTo,
        @DefaultValue("1m") Duration lensOrderEvery,
        @DefaultValue("data/lens-orders-sent") Path lensOrdersSent) {

    /** What the site calls things. */
    Site site(ZoneId zone) {
        return new Site(systems, operations, zone);
    }
}
