package org.lensward.board.api;

import java.lang.reflect.Type;
import org.lensward.board.access.SignedIn;
import org.springframework.core.MethodParameter;
import org.springframework.http.HttpInputMessage;
import org.springframework.http.converter.HttpMessageConverter;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.servlet.mvc.method.annotation.RequestBodyAdviceAdapter;

/** Refuses a request in which a signed-in person acts in another's name, before anything is looked at. */
@ControllerAdvice
public final class OwnName extends RequestBodyAdviceAdapter {

    @Override
    public boolean supports(MethodParameter parameter, Type type, Class<? extends HttpMessageConverter<?>> converter) {
        return NamesActor.class.isAssignableFrom(parameter.getParameterType());
    }

    @Override
    public Object afterBodyRead(
            Object body,
            HttpInputMessage message,
            MethodParameter parameter,
            Type type,
            Class<? extends HttpMessageConverter<?>> converter) {
        ((NamesActor) body).actor().ifPresent(SignedIn::actor);
        return body;
    }
}
