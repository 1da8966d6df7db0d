package org.lensward.board.page;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** What all pages share. */
@Configuration(proxyBeanMethods = false)
@Import({PageModel.class, SignInPages.class})
public class PageConfiguration {}
