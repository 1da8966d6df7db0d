package org.lensward.board.access;

import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.source.ImmutableJWKSet;
import com.nimbusds.jose.proc.DefaultJOSEObjectTypeVerifier;
import com.nimbusds.jose.proc.JOSEObjectTypeVerifier;
import com.nimbusds.jose.proc.JWSVerificationKeySelector;
import com.nimbusds.jose.proc.SecurityContext;
import com.nimbusds.jwt.proc.DefaultJWTProcessor;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.text.ParseException;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import org.lensward.board.access.AccessSettings.Machines;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.oauth2.core.DelegatingOAuth2TokenValidator;
import org.springframework.security.oauth2.jose.jws.SignatureAlgorithm;
import org.springframework.security.oauth2.jwt.Jwt;
import org.springframework.security.oauth2.jwt.JwtClaimNames;
import org.springframework.security.oauth2.jwt.JwtClaimValidator;
import org.springframework.security.oauth2.jwt.JwtDecoder;
import org.springframework.security.oauth2.jwt.JwtValidators;
import org.springframework.security.oauth2.jwt.NimbusJwtDecoder;
import org.springframework.security.oauth2.jwt.SupplierJwtDecoder;
import org.springframework.security.oauth2.server.resource.authentication.JwtAuthenticationToken;

/** Judges the tokens that programs call with: signature by an asymmetric key, issuer, audience, time. */
final class MachineTokens {

    private static final Set<SignatureAlgorithm> ACCEPTED =
            Set.of(SignatureAlgorithm.ES384, SignatureAlgorithm.RS384, SignatureAlgorithm.RS256);

    /** A plain token (RFC 7519) or an access token (RFC 9068). */
    private static final JOSEObjectTypeVerifier<SecurityContext> TYPES =
            new DefaultJOSEObjectTypeVerifier<>(JOSEObjectType.JWT, new JOSEObjectType("at+jwt"), null);

    private final Machines machines;
    private final GrantedRoles roles;

    MachineTokens(Machines machines, GrantedRoles roles) {
        this.machines = machines;
        this.roles = roles;
    }

    /** Where the issuer's keys come from its address, they are fetched when first wanted: it may be away when we start. */
    JwtDecoder decoder() {
        URI keys = machines.keys();
        if (keys != null && "file".equals(keys.getScheme())) {
            return judging(ofFile(Path.of(keys)));
        }
        return new SupplierJwtDecoder(() -> judging((keys == null
                        ? NimbusJwtDecoder.withIssuerLocation(machines.issuer())
                        : NimbusJwtDecoder.withJwkSetUri(keys.toString()))
                .jwsAlgorithms(accepted -> accepted.addAll(ACCEPTED))
                .jwtProcessorCustomizer(processor -> processor.setJWSTypeVerifier(TYPES))
                .build()));
    }

    private static NimbusJwtDecoder ofFile(Path file) {
        DefaultJWTProcessor<SecurityContext> processor = new DefaultJWTProcessor<>();
        processor.setJWSKeySelector(new JWSVerificationKeySelector<>(
                Set.of(JWSAlgorithm.ES384, JWSAlgorithm.RS384, JWSAlgorithm.RS256), keys(file)));
        processor.setJWSTypeVerifier(TYPES);
        // Time and issuer are judged once, by the validators below.
        processor.setJWTClaimsSetVerifier((claims, context) -> {});
        return new NimbusJwtDecoder(processor);
    }

    private static ImmutableJWKSet<SecurityContext> keys(Path file) {
        try {
            return new ImmutableJWKSet<>(JWKSet.load(file.toFile()));
        } catch (IOException | ParseException unreadable) {
            throw new IllegalArgumentException("The keys in " + file + " cannot be read as a JWK Set", unreadable);
        }
    }

    private NimbusJwtDecoder judging(NimbusJwtDecoder decoder) {
        decoder.setJwtValidator(new DelegatingOAuth2TokenValidator<>(List.of(
                JwtValidators.createDefaultWithIssuer(machines.issuer()),
                new JwtClaimValidator<Collection<String>>(
                        JwtClaimNames.AUD, audience -> audience != null && audience.contains(machines.audience())),
                new JwtClaimValidator<Object>(JwtClaimNames.EXP, expiry -> expiry != null))));
        return decoder;
    }

    /** The caller: a person where the token names one, else the program itself. */
    JwtAuthenticationToken caller(Jwt token) {
        Set<GrantedAuthority> granted = roles.authorities(token.getClaim(machines.rolesClaim()));
        String person = token.getClaimAsString(machines.nameClaim());
        return person == null || person.isBlank()
                ? new ProgramToken(token, granted)
                : new JwtAuthenticationToken(token, granted, person);
    }

    private static final class ProgramToken extends JwtAuthenticationToken implements Program {

        private static final long serialVersionUID = 1;

        ProgramToken(Jwt token, Collection<? extends GrantedAuthority> granted) {
            super(token, granted);
        }
    }
}
