package org.lensward.board.access;

import jakarta.validation.Valid;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.validation.annotation.Validated;

/**
 * Who may come in, under {@code lensward.access.*}. With neither people nor machines nothing is served but health and the page that says
 * so.
 *
 * @param open everyone is let in with every role; refused unless the server listens to this machine alone
 * @param people how people sign in, by OpenID Connect
 * @param machines which tokens programs may call with
 * @param roles what the values of the roles' claim mean here; a role's own name always means it
 * @param idle how long a session lives without anybody doing anything; looking for news does not count
 */
@Validated
@ConfigurationProperties("lensward.access")
public record AccessSettings(
        boolean open,
        @Valid @Nullable People people,
        @Valid @Nullable Machines machines,
        @DefaultValue Map<String, Role> roles,
        @DefaultValue("30m") Duration idle) {

    /**
     * The hospital's identity provider.
     *
     * @param issuer its address, from which the rest is discovered
     * @param clientId Lensward's name there
     * @param clientSecret Lensward's secret there; better from the environment or a file than from a command line
     * @param scopes what to ask for
     * @param rolesClaim the claim with the person's roles or groups
     * @param nameClaim the claim with the name that plans and checks will carry
     */
    public record People(
            @NotNull URI issuer,
            @NotBlank String clientId,
            @NotBlank String clientSecret,
            @DefaultValue({"openid", "profile"}) List<String> scopes,
            @NotBlank @DefaultValue("roles") String rolesClaim,
            @NotBlank @DefaultValue("name") String nameClaim) {

        @Override
        public String toString() {
            return "People[issuer=" + issuer + ", clientId=" + clientId + "]";
        }
    }

    /**
     * Signed tokens of programs (RFC 7519, RFC 6750).
     *
     * @param issuer who must have issued them
     * @param audience for whom they must have been issued
     * @param keys the issuer's public keys: a JWK Set at an address or in a file; discovered from the issuer if absent
     * @param rolesClaim the claim with roles or scopes: a list, or words with spaces between
     * @param nameClaim the claim with a person's name, if the program acts for one
     */
    public record Machines(
            @NotBlank String issuer,
            @NotBlank String audience,
            @Nullable URI keys,
            @NotBlank @DefaultValue("roles") String rolesClaim,
            @NotBlank @DefaultValue("name") String nameClaim) {

        @AssertTrue(message = "keys must be a file: or https: address")
        boolean isFetchable() {
            return keys == null || List.of("file", "https", "http").contains(String.valueOf(keys.getScheme()));
        }
    }
}
