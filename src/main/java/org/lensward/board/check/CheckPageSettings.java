package org.lensward.board.check;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * The Check page.
 *
 * @param hospital where lenses are implanted, as the record refers to it ({@code Organization/h1}), or a name; written at sign-out
 * @param separator the character or characters that this hospital's scanners send for GS1's FNC1 where they cannot send ASCII 29; none if
 *     they can
 */
@ConfigurationProperties("lensward.check-page")
record CheckPageSettings(
        @DefaultValue("this hospital") String hospital,
        @DefaultValue("") String separator) {}
