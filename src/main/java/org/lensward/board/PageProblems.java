package org.lensward.board;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.lensward.board.page.Notice;
import org.springframework.core.Ordered;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.springframework.web.method.annotation.ExceptionHandlerMethodResolver;
import org.springframework.web.servlet.HandlerExceptionResolver;
import org.springframework.web.servlet.ModelAndView;

/** What went wrong, as a page: the words are those of {@link Problems}. Calls of programs are left to it. */
final class PageProblems implements HandlerExceptionResolver, Ordered {

    private static final List<String> CALLS = List.of("/api/", "/fhir/", "/cds-services", "/actuator/");

    private static final ExceptionHandlerMethodResolver WORDS = new ExceptionHandlerMethodResolver(Problems.class);

    private final Problems problems;

    PageProblems(Problems problems) {
        this.problems = problems;
    }

    @Override
    public int getOrder() {
        return Ordered.HIGHEST_PRECEDENCE + 1;
    }

    @Override
    public @Nullable ModelAndView resolveException(
            HttpServletRequest request, HttpServletResponse response, @Nullable Object handler, Exception failure) {
        if (CALLS.stream().anyMatch(request.getRequestURI()::startsWith)) {
            return null;
        }
        ProblemDetail problem = failure instanceof ErrorResponse known
                ? known.getBody()
                : told(failure).orElseGet(PageProblems::unread);
        Notice notice = new Notice(
                String.valueOf(problem.getTitle()),
                String.valueOf(problem.getDetail()),
                problem.getStatus() == 404 ? "Look for it on the Day page." : "Look at the page anew, then try again.");
        return notice.answer(request, response, HttpStatusCode.valueOf(problem.getStatus()));
    }

    private Optional<ProblemDetail> told(Exception failure) {
        Method words = WORDS.resolveMethodByThrowable(failure);
        return Stream.<@Nullable Throwable>iterate(
                        failure, each -> each != null, each -> each == null ? null : each.getCause())
                .filter(each -> words != null
                        && words.getParameterCount() == 1
                        && words.getParameterTypes()[0].isInstance(each))
                .findFirst()
                .map(each -> say(words, each));
    }

    /** What is left is of the frame around us: an address or a field that is not what it must be. */
    private static ProblemDetail unread() {
        ProblemDetail problem = ProblemDetail.forStatusAndDetail(
                HttpStatus.BAD_REQUEST, "The address or a field is not what it must be. Nothing was written.");
        problem.setTitle("It cannot be read");
        return problem;
    }

    private ProblemDetail say(Method words, Throwable failure) {
        try {
            return (ProblemDetail) words.invoke(problems, failure);
        } catch (IllegalAccessException | InvocationTargetException broken) {
            throw new IllegalStateException("A problem has no words", broken);
        }
    }
}
